//! Plates for loads.

use holdfast_core::session::{PlateView, PlatesScreen, PlatesStep};
use owo_colors::OwoColorize;

use crate::say;

/// Each load with what to do for it, and a drawing of one side of the bar.
pub(crate) fn plates(screen: &PlatesScreen) -> String {
    let heading = format!("{}\n", screen.heading.bold());
    if let [only] = screen.steps.as_slice() {
        let text = say::plates::only_load(&only.load, &only.build);
        return format!("{heading}  {text}\n{}", side(&only.plates));
    }
    let step = |step: &PlatesStep| {
        let (load, change) = (step.load.bold().to_string(), &step.change);
        let text = match step.warm_up_reps {
            Some(reps) => say::plates::warm_up_step(load, reps, change),
            None => say::plates::step(load, change),
        };
        format!("{text}\n{}", side(&step.plates))
    };
    let steps: String = screen.steps.iter().map(step).collect();
    format!("{heading}{steps}{}\n", screen.handling)
}

/// So wide is a drawing at the most: a narrow terminal.
const WIDE: usize = 40;

/// How high a plate of 450 mm stands, and what is less high in as many steps.
const HEIGHTS: [char; 8] = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];
const FULL_MM: usize = 450;

/// One side of the bar from its middle outwards: every plate as wide as its number and as high as it stands
/// beside the others.
fn side(plates: &[PlateView]) -> String {
    let one = |plates: &[PlateView]| {
        let plate = plates.first()?;
        let number = match plates.len() {
            1 => plate.number.clone(),
            more => say::plates::several(&plate.number, more),
        };
        Some((number, plate.diameter_mm as usize))
    };
    let each = plates.chunks(1).filter_map(one).collect::<Vec<(String, usize)>>();
    let drawn = draw(&each);
    if drawn.iter().all(|line| line.chars().count() <= WIDE) {
        return drawn.join("");
    }
    let alike = plates.chunk_by(|inner, outer| inner.mass == outer.mass);
    draw(&alike.filter_map(one).collect::<Vec<(String, usize)>>()).join("")
}

/// The plates, where there are any, and the bar they lie on; each line ends.
fn draw(plates: &[(String, usize)]) -> Vec<String> {
    let (mut above, mut bar) = (String::from("    "), String::from("  ━━"));
    for (number, diameter) in plates {
        let wide = number.chars().count();
        let height = (diameter * HEIGHTS.len() + FULL_MM / 2) / FULL_MM;
        let block = HEIGHTS[height.clamp(1, HEIGHTS.len()) - 1];
        above.push(' ');
        above.extend(std::iter::repeat_n(block, wide));
        bar.push('━');
        bar += number;
    }
    bar += "━━━\n";
    if plates.is_empty() { vec![bar] } else { vec![above + "\n", bar] }
}

#[cfg(test)]
mod tests {
    use holdfast_core::Mass;

    use super::*;

    fn plate(kilograms: i64, number: &str, diameter_mm: u32) -> PlateView {
        let mass = Mass::thousandths(kilograms, holdfast_core::MassUnit::Kg);
        PlateView { mass, number: number.into(), colour: None, diameter_mm, put_on: true }
    }

    #[test]
    fn a_side_is_drawn_with_its_plates_in_order_and_height() {
        let plates =
            [(20_000, "20", 450), (5_000, "5", 230), (2_500, "2.5", 210), (1_250, "1.25", 160)];
        let plates = plates.map(|(mass, number, high)| plate(mass, number, high));
        let drawn = "     ██ ▄ ▄▄▄ ▃▃▃▃\n  ━━━20━5━2.5━1.25━━━\n";
        assert_eq!(side(&plates), drawn);
        assert_eq!(side(&[]), "  ━━━━━\n");
    }

    /// Ten plates, the most there are: equal ones are counted where they would not fit.
    #[test]
    fn a_full_side_fits_a_narrow_terminal() {
        let small: Vec<PlateView> = (0..10).map(|_| plate(1_250, "1.25", 160)).collect();
        assert_eq!(side(&small), "     ▃▃▃▃▃▃▃\n  ━━━1.25×10━━━\n");
        let mut usual: Vec<PlateView> = (0..4).map(|_| plate(25_000, "25", 450)).collect();
        usual.extend([plate(20_000, "20", 450), plate(15_000, "15", 450)]);
        usual.extend([plate(10_000, "10", 450), plate(5_000, "5", 230)]);
        usual.extend([plate(2_500, "2.5", 210), plate(1_250, "1.25", 160)]);
        let drawn = side(&usual);
        assert!(drawn.contains("━25━25━25━25━20━15━10━5━2.5━1.25━"), "{drawn}");
        assert!(drawn.lines().all(|line| line.chars().count() <= WIDE), "{drawn}");
    }
}
