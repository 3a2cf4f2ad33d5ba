import Foundation
@_exported import HoldfastCore
@_exported import HoldfastTypes

/// Hosts the device's one `Holdfast` and keeps it off the main thread.
///
/// Taps are done one after the other. Each is on disk before ``tap(_:answers:isolation:)`` returns, and a
/// tap that was made is done even when the task that made it is cancelled: the core never hears of
/// cancellation.
///
/// Every call throws `HoldfastError` with its reason in fields; its ``HoldfastCore/HoldfastError/words``
/// have it as a sentence. One host a process and home folder is enough: keep it in the app, not in a view.
public actor Host {
    /// What a view observes: the session screen as it was last.
    public nonisolated let session: SessionModel

    private let core: Holdfast
    private let clock: DeviceClock
    private let coreThread: CoreThread

    /// The core waits for the disk, so it gets a thread of its own: the threads that tasks share
    /// must not wait.
    public nonisolated var unownedExecutor: UnownedSerialExecutor { coreThread.asUnownedSerialExecutor() }

    /// Opens a home folder that somebody started before. `keystore` is the 32 bytes that it was started with, from the
    /// system's keychain.
    public static func open(
        home: String, keystore: Data? = nil, clock: @escaping DeviceClock
    ) async throws -> Host {
        try await make(clock) { try Holdfast.open(home: home, at: clock(), keystore: keystore) }
    }

    /// Makes a home folder for somebody who starts.
    public static func start(
        home: String, start: Start, keystore: Data? = nil, clock: @escaping DeviceClock
    ) async throws -> Host {
        try await make(clock) { try Holdfast.start(home: home, start: start, at: clock(), keystore: keystore) }
    }

    private static func make(
        _ clock: @escaping DeviceClock,
        _ core: @escaping @Sendable () throws -> Holdfast
    ) async throws -> Host {
        let coreThread = CoreThread()
        let core = try await coreThread.run(core)
        return Host(core: core, clock: clock, coreThread: coreThread, session: SessionModel())
    }

    private init(core: Holdfast, clock: @escaping DeviceClock, coreThread: CoreThread, session: SessionModel) {
        self.core = core
        self.clock = clock
        self.coreThread = coreThread
        self.session = session
    }

    /// Reads the session screen as it is now.
    @discardableResult
    public func today() async throws -> SessionScreen {
        await show(try core.today(at: clock()))
    }

    /// Chooses a row by hand: the screen's key is about it until something is logged. Without a row the
    /// screen follows the day again.
    @discardableResult
    public func choose(_ row: Row?) async throws -> SessionScreen {
        await show(try core.choose(row: row, at: clock()))
    }

    /// Does what a tap says. The moment is that of the call, however long its turn takes to come.
    ///
    /// `revision` is that of the screen whose key was tapped: a key tapped twice is done once. A tap
    /// that answers no screen, such as a typed line, has none.
    ///
    /// Begins on the caller's own actor, so taps made there take their turns in the order they were
    /// made. Returns once the main actor has the screen: whoever holds the main thread must not wait
    /// for it.
    @discardableResult
    public func tap(
        _ tap: Tap,
        answers revision: UInt64?,
        isolation: isolated (any Actor)? = #isolation
    ) async throws -> SessionScreen {
        try await done(tap, revision, at: clock())
    }

    /// Takes files to a carrier and from it until both sides have everything. Exchanges take turns, and
    /// taps go on between their steps.
    ///
    /// One that is cancelled stops between two steps; what was taken in by then is kept. The ``session``
    /// stays as it is: a plan may have come, so call ``today()`` after it.
    public func exchange(with carrier: some Carrier) async throws -> ExchangeReport {
        await beginExchange()
        defer { endExchange() }
        var did = ExchangeDid.begin
        while true {
            try Task.checkCancellation()
            switch try core.exchange(did: did, at: clock()) {
            case .listFiles: did = .listed(files: try await carrier.list())
            case let .get(names):
                let got = try await carrier.get(names)
                did = .got(files: got.files, unread: got.unread)
            case let .put(files):
                let put = try await carrier.put(files)
                did = .put(written: put.written, unwritten: put.unwritten)
            case let .done(report): return report
            }
        }
    }

    /// Asks anything else of the core, in turn with the taps:
    /// `host.ask { core, now in try core.board(date: date) }`. What is asked does not change the
    /// ``session``, so a tap belongs in ``tap(_:answers:isolation:)``.
    public func ask<Reply: Sendable>(
        _ question: @Sendable (_ core: Holdfast, _ now: Instant) throws -> Reply
    ) throws -> Reply {
        try question(core, clock())
    }

    /// Closes the database. Calls after it are refused with `HoldfastError.Invalid`; closing twice
    /// is harmless.
    public func close() throws {
        try core.shut()
    }

    private func done(_ tap: Tap, _ revision: UInt64?, at moment: Instant) async throws -> SessionScreen {
        await show(try core.tap(tap: tap, answers: revision, at: moment))
    }

    private var isExchanging = false
    private var waiting: [CheckedContinuation<Void, Never>] = []

    /// The core knows one exchange at a time; another's steps in between would confuse it.
    private func beginExchange() async {
        if isExchanging {
            await withCheckedContinuation { waiting.append($0) }
        }
        isExchanging = true
    }

    private func endExchange() {
        isExchanging = !waiting.isEmpty
        if isExchanging { waiting.removeFirst().resume() }
    }

    /// How many screens were shown.
    private var screens = 0

    private func show(_ screen: SessionScreen) async -> SessionScreen {
        screens += 1
        await session.show(screen, number: screens)
        return screen
    }
}

extension HoldfastError {
    /// The error as a sentence to show: what is wrong, where, and what to do.
    public var words: String { explain(error: self) }
}
