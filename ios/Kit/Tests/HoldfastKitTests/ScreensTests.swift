import Foundation
import HoldfastKit
import Support
import XCTest

/// The whole loop as `tests/tests/screens.rs` plays it: every screen is the one Rust saw.
final class ScreensTests: XCTestCase {
    private func clock(_ piece: String) -> Tap { .clock(piece: piece, act: .begin, station: nil) }

    private func window(_ spare: Duration?) -> Tap {
        .logWindow(piece: "Corners", window: nil, reps: nil, spare: spare)
    }

    private func range(_ when: MeasuredWhen, _ tenths: Int64) -> Tap {
        .logRange(piece: "Calves", when: when, readings: [SideReading(side: 1, tenths: tenths)])
    }

    private func option(_ option: String?) -> Tap {
        .takeOption(piece: "Squat", movement: nil, option: option)
    }

    private func flag(_ severity: UInt32) -> Tap {
        .flag(piece: "Squat", movement: nil, place: .knee, severity: severity, signs: [])
    }

    func testScreensAreTheSameInEveryLanguage() throws {
        let homes = try homes()
        let carrier = MemoryCarrier()
        let coach = try Player(homes, .coach, "Märta", .kg, chance: 0)
        let zoe = try Player(homes, .athlete, "Zoë", .kg, chance: 60)
        let jun = try Player(homes, .athlete, "Łucja 純", .lb, chance: 120)
        var seen: [NSObject] = []
        func see(_ screen: Any) { seen.append(dump(screen)) }

        let plan = try Fixtures.plan()
        see(try coach.core.publish(sourceName: "small-plan.toml", text: plan, at: coach.now))
        for (chance, player) in [(1, zoe), (2, jun)] as [(UInt8, Player)] {
            try pair(coach.core, player.core, at: coach.now, chance: chance).forEach { see($0) }
        }
        for player in [coach, zoe, jun] {
            see(try player.exchange(carrier))
            see(try player.core.who())
        }

        zoe.goTo("2026-11-03")
        see(try zoe.today())
        see(try zoe.tap(.begin(day: nil)))
        see(try zoe.tap(squat(kilograms(50))))
        see(try zoe.tap(option("box-squat")))
        see(try zoe.tap(option(nil)))
        for bar in ["pound bar", "long bar"] {
            see(try zoe.tap(.takeBar(piece: "Squat", bar: bar)))
        }
        see(try zoe.tap(squat(kilograms(60), 6)))
        see(try zoe.tap(squat(kilograms(70), 8)))
        see(try zoe.tap(.note(row: nil, words: "Griff rutschte", private: false)))
        see(try zoe.tap(.note(row: nil, words: "schlief schlecht", private: true)))
        see(try zoe.tap(clock("Corners")))
        zoe.pass(53_000)
        see(try zoe.tap(window(nil)))
        zoe.pass(60_000)
        see(try zoe.tap(window(.seconds(4))))
        see(try zoe.tap(range(.before, 100)))
        see(try zoe.tap(clock("Calves")))
        zoe.pass(135_000)
        see(try zoe.today())
        zoe.pass(60_000)
        see(try zoe.tap(.logHold(piece: "Calves", held: [], said: nil)))
        see(try zoe.tap(range(.after, 130)))
        see(try zoe.tap(flag(6)))
        see(try zoe.tap(.undo))
        see(try zoe.tap(flag(4)))
        see(try zoe.tap(.finish(rpe: 7, minutes: 60)))

        jun.goTo("2026-11-03")
        see(try jun.tap(.begin(day: nil)))
        for (load, reps) in [(95, 8), (115, 6), (135, 3)] as [(Int64, UInt32)] {
            see(try jun.tap(squat(pounds(load), reps)))
        }
        see(try jun.tap(.finish(rpe: nil, minutes: nil)))

        let date = "2026-11-04"
        coach.goTo(date)
        for player in [zoe, jun, coach] { see(try player.exchange(carrier)) }
        see(try coach.core.board(date: Day(date)!))
        let lucja = try coach.core.member(name: "łucja 純", date: Day(date)!)
        let asked = lucja.proposals[0]
        see(lucja)
        let answer = Answer(
            person: lucja.person,
            exercise: asked.exercise,
            track: asked.track,
            decision: .accept,
            loads: [],
            words: "Gut so – weiter!"
        )
        try coach.core.answer(answer: answer, at: coach.now)
        let page = try coach.core.member(name: "Zoë", date: Day(date)!)
        see(page)
        let note = NoteGiven(
            member: "Zoë",
            on: Day("2026-11-03")!,
            set: SetOfPiece(piece: "Squat", set: 3),
            session: nil,
            words: "Kreide 純",
            private: false
        )
        see(try coach.core.note(given: note, at: coach.now))
        try coach.core.clearFlag(person: page.person, flag: page.discomfort[0].flag, at: coach.now)
        for player in [coach, zoe, jun] { see(try player.exchange(carrier)) }
        zoe.goTo("2026-11-05")
        see(try zoe.today())
        jun.goTo(date)
        see(try jun.core.preview(date: Day("2026-11-05")!, day: nil, at: jun.now))

        let listed = try zoe.core.sets(name: nil, on: nil, latest: 1)
        let last = listed.sessions[0].sets[2].lift
        see(listed)
        let correction = try zoe.core.readCorrection(typed: "80 x 5, 1 left")
        see(try zoe.core.correct(lift: last, correction: correction, at: zoe.now)!)
        let tested = MaxGiven(
            member: nil,
            movement: "Back squat",
            load: kilograms(90),
            anyway: false
        )
        see(try zoe.core.giveMax(given: tested, at: zoe.now)!)
        for player in [zoe, coach] { see(try player.exchange(carrier)) }
        let named = SetNamed(
            member: "Zoë",
            on: Day("2026-11-03")!,
            piece: "Squat",
            set: 1,
            session: nil
        )
        let first = try coach.core.findSet(named: named)
        see(first)
        see(try coach.core.setAside(lift: first.lift, aside: true, at: coach.now)!)
        see(try coach.core.member(name: "Zoë", date: Day(date)!))
        for player in [coach, zoe] { see(try player.exchange(carrier)) }
        see(try zoe.today())
        see(try coach.core.export())

        let wanted = try Fixtures.screens()
        XCTAssertEqual(wanted.count, seen.count)
        for (step, (rust, swift)) in zip(wanted, seen).enumerated() {
            XCTAssertEqual(rust, swift, "what step \(step) shows")
        }
    }
}
