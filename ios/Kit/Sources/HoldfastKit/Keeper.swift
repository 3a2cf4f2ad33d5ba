@_exported import HoldfastCore
@_exported import HoldfastTypes

/// Holds the device's one `Holdfast` and keeps it off the main thread.
///
/// Taps are done one after the other. Each is on disk before ``tap(_:isolation:)`` returns, and a tap that was
/// made is done even when the task that made it is cancelled: the core never hears of cancellation.
///
/// Every call throws `CompanionError` with its reason in fields; its ``CompanionError/words`` have it
/// as a sentence. One keeper a process and home folder is enough: keep it in the app, not in a view.
public actor Keeper {
    /// What a view observes: the session screen as it was last.
    public nonisolated let shown: Shown

    private let core: Holdfast
    private let moments: Moments
    private let lane: Lane

    /// The core waits for the disk, so it gets a thread of its own: the threads that tasks share
    /// must not wait.
    public nonisolated var unownedExecutor: UnownedSerialExecutor { lane.asUnownedSerialExecutor() }

    /// Opens a home folder that somebody started before.
    public static func open(home: String, moments: @escaping Moments) async throws -> Keeper {
        try await make(moments) { try Holdfast.open(home: home, at: moments()) }
    }

    /// Makes a home folder for somebody who starts.
    public static func start(home: String, start: Start, moments: @escaping Moments) async throws -> Keeper {
        try await make(moments) { try Holdfast.start(home: home, start: start, at: moments()) }
    }

    private static func make(
        _ moments: @escaping Moments,
        _ core: @escaping @Sendable () throws -> Holdfast
    ) async throws -> Keeper {
        let lane = Lane()
        let core = try await lane.run(core)
        return Keeper(core: core, moments: moments, lane: lane, shown: Shown())
    }

    private init(core: Holdfast, moments: @escaping Moments, lane: Lane, shown: Shown) {
        self.core = core
        self.moments = moments
        self.lane = lane
        self.shown = shown
    }

    /// Reads the session screen as it is now.
    @discardableResult
    public func today() async throws -> SessionScreen {
        await show(try core.today(at: moments()))
    }

    /// Does what a tap says. The moment is that of the call, however long its turn takes to come.
    ///
    /// Begins on the caller's own actor, so taps made there take their turns in the order they were
    /// made. Returns once the main actor has the screen: whoever holds the main thread must not wait
    /// for it.
    @discardableResult
    public func tap(_ tap: Tap, isolation: isolated (any Actor)? = #isolation) async throws -> SessionScreen {
        try await done(tap, at: moments())
    }

    /// Asks anything else of the core, in turn with the taps:
    /// `keeper.ask { core, now in try core.board(date: date) }`. What is asked does not change what
    /// is ``shown``, so a tap belongs in ``tap(_:isolation:)``.
    public func ask<Answer: Sendable>(
        _ question: @Sendable (_ core: Holdfast, _ now: Instant) throws -> Answer
    ) throws -> Answer {
        try question(core, moments())
    }

    /// Closes the database. Calls after it are refused with `CompanionError.Invalid`; closing twice
    /// is harmless.
    public func close() throws {
        try core.shut()
    }

    private func done(_ tap: Tap, at moment: Instant) async throws -> SessionScreen {
        await show(try core.tap(tap: tap, at: moment))
    }

    private var number = 0

    private func show(_ screen: SessionScreen) async -> SessionScreen {
        number += 1
        await shown.show(screen, number: number)
        return screen
    }
}

/// The moment it is, by the device's two clocks. The core never asks for the time; it is told.
///
/// On an Apple device: `Date`, the zone's offset, `mach_continuous_time` and `kern.bootsessionuuid`.
public typealias Moments = @Sendable () -> Instant

extension CompanionError {
    /// The error as a sentence to show: what is wrong, where, and what to do.
    public var words: String { explain(error: self) }
}
