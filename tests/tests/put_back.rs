//! A carrier that was put back to an older state, as a provider's backup does it.

use holdfast_tests::train::squats;
use holdfast_tests::{Carrier, Device, SMALL_PLAN};

use crate::lost::crew;

/// A laptop that is set up from it cannot know what is missing. It is told as soon as somebody speaks who has seen that.
#[test]
fn what_a_carrier_lost_is_named_once_somebody_speaks() {
    let crew = crew();
    let ana = &crew.athletes[0];
    let code = crew.coach.on_paper().unwrap();
    let old = Carrier::new(crew.folder().join("old"));
    crew.carrier.copy_to(&old);
    crew.coach.publish(&SMALL_PLAN.replace("Small", "Other")).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    assert!(ana.exchange(&crew.carrier).unwrap().leaves > 0);
    let home = crew.folder().join("laptop");
    let laptop = Device::restored(home, &code, &old, (9, crew.coach.now())).unwrap();
    let arrivals = || laptop.holdfast.board("2026-11-06".parse().unwrap()).unwrap().arrivals;
    assert!(arrivals().is_empty(), "{:?}", arrivals());
    // Ana's phone hears of the laptop, and seals to it from then on.
    ana.exchange(&old).unwrap();
    squats(ana, "2026-11-05", &[(52, 8)]);
    ana.exchange(&old).unwrap();
    assert!(laptop.take_in(&old.leaves_of(ana)).unwrap().leaves > 0);
    let named = arrivals();
    assert!(named.len() == 1 && named[0].contains("Maren"), "{named:?}");
    // With the whole carrier; the code is on paper, so what the laptop lacks is sealed to it again.
    for device in [&laptop, &crew.coach, &laptop] {
        device.exchange(&crew.carrier).unwrap();
    }
    assert!(arrivals().is_empty(), "{:?}", arrivals());
}
