import Dispatch

/// A serial executor with a thread that may wait for the disk.
final class CoreThread: SerialExecutor {
    private let queue = DispatchQueue(label: "holdfast.core", qos: .userInitiated)

    func enqueue(_ job: consuming ExecutorJob) {
        let job = UnownedJob(job)
        queue.async { job.runSynchronously(on: self.asUnownedSerialExecutor()) }
    }

    func asUnownedSerialExecutor() -> UnownedSerialExecutor {
        UnownedSerialExecutor(ordinary: self)
    }

    /// Runs something on the thread before there is an actor on it.
    func run<Made: Sendable>(_ work: @escaping @Sendable () throws -> Made) async throws -> Made {
        try await withCheckedThrowingContinuation { done in
            queue.async { done.resume(with: Result(catching: work)) }
        }
    }
}
