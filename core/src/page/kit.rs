//! What the room has, as the plan says: bars, plates, bells, machines.

use super::record::{PageRow, PageScreen};
use super::rows::headed;
use crate::device::Device;
use crate::error::Result;
use crate::instant::Instant;
use crate::mass::{Mass, MassUnit};
use crate::say::page as say;
use crate::words;

pub(super) fn page(device: &mut Device, at: &Instant) -> Result<PageScreen> {
    let unit = device.profile()?.unit;
    let mut page = PageScreen::titled(say::room());
    let Some(plan) = device.block_for(at.date())? else {
        page.said.push(say::no_plan_no_kit().to_owned());
        return Ok(page);
    };
    let kit = &plan.block.kit;
    page.beside = Some(kit.name.clone());
    page.said.push(say::loads_follow_the_kit().to_owned());
    let counted = |mass: Mass, count: u32| say::times(count, words::load_text(mass, unit));
    let bars = kit.bars.iter().map(|bar| {
        let row = PageRow::titled(&bar.name).worth(counted(bar.mass, bar.count));
        if bar.collars == Mass::default() {
            row
        } else {
            row.says(say::with_collars(words::load_text(bar.collars, unit)))
        }
    });
    page.rows.extend(headed(bars.collect(), say::bars()));
    for (of, heading) in [(MassUnit::Kg, say::plates_kg()), (MassUnit::Lb, say::plates_lb())] {
        let plates = kit.plates.iter().filter(|plate| plate.unit == of);
        let rows = plates
            .map(|plate| PageRow::titled(plate.mass.text(of)).worth(say::pieces(plate.count)));
        page.rows.extend(headed(rows.collect(), heading));
    }
    let bells = kit.bells.iter().map(|bell| {
        PageRow::titled(words::load_text(bell.mass, unit)).worth(say::pieces(bell.count))
    });
    page.rows.extend(headed(bells.collect(), say::bells()));
    let machines = kit.machines.iter().map(|machine| PageRow::titled(&machine.name));
    page.rows.extend(headed(machines.collect(), say::machines()));
    Ok(page)
}
