//! Everything the room can build, each worked out once.

use std::sync::OnceLock;

use super::{Block, Builds, Exercise, Lifted, LoadKind, Strength};
use crate::mass::MassUnit;

/// What a block's kit can build: each bar when it is first asked for, all else at once.
#[derive(Debug)]
pub struct Rack {
    /// In the order of the kit.
    bars: Vec<OnceLock<Builds>>,
    no_bar: Builds,
    bells: Builds,
    pairs: Builds,
    added_kg: Builds,
    added_lb: Builds,
    assisted: Builds,
    /// In the order of the kit.
    machines: Vec<Builds>,
    no_machine: Builds,
    body: Builds,
}

impl Rack {
    /// Works out what the kit of `block` can build.
    pub fn new(block: &Block) -> Rack {
        let kit = &block.kit;
        Rack {
            bars: kit.bars.iter().map(|_| OnceLock::new()).collect(),
            no_bar: Builds::none(LoadKind::Plates, MassUnit::Kg),
            bells: Builds::bells(&kit.bells, MassUnit::Kg),
            pairs: Builds::pairs(&kit.bells, MassUnit::Kg),
            added_kg: Builds::added(kit, MassUnit::Kg),
            added_lb: Builds::added(kit, MassUnit::Lb),
            assisted: Builds::assisted(&kit.assistance),
            machines: kit.machines.iter().map(Builds::machine).collect(),
            no_machine: Builds::none(LoadKind::Stack, MassUnit::Kg),
            body: Builds::none(LoadKind::Bells, MassUnit::Kg),
        }
    }

    /// What carries the load of an exercise, in a piece or whatever the piece; nothing carries body mass
    /// alone, or an exercise that `block`, whose rack this is, does not know. `unit` is the one that
    /// whoever lifts prefers: it chooses where the plan does not.
    pub fn builds(
        &self,
        block: &Block,
        piece: Option<&Strength>,
        exercise: &Exercise,
        unit: MassUnit,
    ) -> &Builds {
        match block.lifted(exercise).unwrap_or(Lifted::Body) {
            Lifted::Bar => {
                let bar = block.bar_for(piece, exercise, unit);
                bar.and_then(|bar| self.bar(block, &bar.name)).unwrap_or(&self.no_bar)
            }
            Lifted::Bell => &self.bells,
            Lifted::Pair => &self.pairs,
            Lifted::Body => &self.body,
            Lifted::Added if unit == MassUnit::Kg => &self.added_kg,
            Lifted::Added => &self.added_lb,
            Lifted::Assisted => &self.assisted,
            Lifted::Machine => {
                let machine = block.machine_for(exercise);
                let index = block.kit.machines.iter().position(|of| Some(of) == machine);
                index.and_then(|index| self.machines.get(index)).unwrap_or(&self.no_machine)
            }
        }
    }

    /// What a bar of the kit of `block`, whose rack this is, can be built to.
    pub fn bar(&self, block: &Block, name: &str) -> Option<&Builds> {
        let index = block.kit.bars.iter().position(|bar| bar.name == name)?;
        let bar = block.kit.bars.get(index)?;
        Some(self.bars.get(index)?.get_or_init(|| Builds::bar(&block.kit, bar)))
    }
}
