//! Counting what is allocated, so that a reader's memory has a bound that is checked.

use std::alloc::{GlobalAlloc, Layout, System};
use std::sync::atomic::{AtomicUsize, Ordering::Relaxed};

static NOW: AtomicUsize = AtomicUsize::new(0);
static PEAK: AtomicUsize = AtomicUsize::new(0);

struct Counting;

#[global_allocator]
static COUNTING: Counting = Counting;

fn grown(by: usize) {
    let now = NOW.fetch_add(by, Relaxed) + by;
    PEAK.fetch_max(now, Relaxed);
}

// Passes everything on to the system's allocator, and counts.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        grown(layout.size());
        unsafe { System.alloc(layout) }
    }

    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        grown(layout.size());
        unsafe { System.alloc_zeroed(layout) }
    }

    unsafe fn dealloc(&self, at: *mut u8, layout: Layout) {
        NOW.fetch_sub(layout.size(), Relaxed);
        unsafe { System.dealloc(at, layout) }
    }

    unsafe fn realloc(&self, at: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        // Both are there while it is copied.
        grown(size);
        let moved = unsafe { System.realloc(at, layout, size) };
        NOW.fetch_sub(layout.size(), Relaxed);
        moved
    }
}

/// Runs something that may have `bytes` of memory more than there was before, at its most.
///
/// # Panics
/// Where it took more.
pub fn within<T>(bytes: usize, run: impl FnOnce() -> T) -> T {
    let before = NOW.load(Relaxed);
    PEAK.store(before, Relaxed);
    let came = run();
    let taken = PEAK.load(Relaxed).saturating_sub(before);
    assert!(taken <= bytes, "took {taken} bytes of memory where {bytes} are enough");
    came
}
