import HoldfastCore
import Observation

/// The session screen as it was last, for views to observe.
@MainActor
@Observable
public final class SessionModel {
    /// The screen; nil until the host's `today`, `choose` or `tap` is called.
    public private(set) var screen: SessionScreen?

    private var number = 0

    nonisolated init() {}

    /// Shows a screen, unless a newer one came first.
    func show(_ screen: SessionScreen, number: Int) {
        guard number > self.number else { return }
        self.number = number
        self.screen = screen
    }
}
