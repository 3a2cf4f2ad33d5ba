//! Two JSON values held against each other: numbers nearly, everything else to the letter.

use serde_json::Value;

/// How far apart two numbers may be, as a part of the larger. Libraries sum in other orders on other
/// processors; a formula that changed is further off.
const RELATIVE: f64 = 1e-9;

/// No more differences than a person reads.
const SHOWN: usize = 10;

/// Where two values differ, each with its place; none when they agree.
pub(super) fn differences(kept: &Value, made: &Value) -> Vec<String> {
    let mut found = Vec::new();
    compare("", kept, made, &mut found);
    if found.len() > SHOWN {
        let more = found.len() - SHOWN;
        found.truncate(SHOWN);
        found.push(format!("and {more} more"));
    }
    found
}

fn compare(at: &str, kept: &Value, made: &Value, found: &mut Vec<String>) {
    match (kept, made) {
        (Value::Object(kept), Value::Object(made)) => {
            for (key, value) in kept {
                match made.get(key) {
                    Some(other) => compare(&format!("{at}/{key}"), value, other, found),
                    None => found.push(format!("{at}/{key}: no longer printed")),
                }
            }
            let new = made.keys().filter(|key| !kept.contains_key(*key));
            found.extend(new.map(|key| format!("{at}/{key}: printed and not kept")));
        }
        (Value::Array(kept), Value::Array(made)) if kept.len() == made.len() => {
            for (index, (value, other)) in kept.iter().zip(made).enumerate() {
                compare(&format!("{at}/{index}"), value, other, found);
            }
        }
        (Value::Array(kept), Value::Array(made)) => {
            found.push(format!("{at}: {} values kept, {} printed", kept.len(), made.len()));
        }
        (Value::Number(_), Value::Number(_)) if near(kept, made) => {}
        _ if kept == made => {}
        _ => found.push(format!("{at}: {kept} kept, {made} printed")),
    }
}

fn near(kept: &Value, made: &Value) -> bool {
    let (Some(kept), Some(made)) = (kept.as_f64(), made.as_f64()) else { return false };
    (kept - made).abs() <= RELATIVE * kept.abs().max(made.abs())
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn numbers_agree_nearly_and_all_else_to_the_letter() {
        let kept = json!({"a": [1.0, 2, null, "x", true], "b": {"c": 1e-30}});
        let same = json!({"a": [1.0 + 5e-10, 2.0, null, "x", true], "b": {"c": 1e-30}});
        assert_eq!(differences(&kept, &same), Vec::<String>::new());
        let other = json!({"a": [1.0 + 2e-9, -2, 0, "y", false], "b": {"d": 1e-30}});
        let places: Vec<String> = differences(&kept, &other)
            .iter()
            .map(|difference| difference.split(':').next().unwrap().to_owned())
            .collect();
        assert_eq!(places, ["/a/0", "/a/1", "/a/2", "/a/3", "/a/4", "/b/c", "/b/d"]);
        // A zero is near nothing but zero.
        assert_eq!(differences(&json!(0), &json!(1e-300)).len(), 1);
        assert_eq!(differences(&json!(0), &json!(-0.0)).len(), 0);
    }

    #[test]
    fn lengths_and_kinds_are_compared_and_few_are_shown() {
        assert_eq!(differences(&json!([1]), &json!([1, 2])), [": 1 values kept, 2 printed"]);
        assert_eq!(differences(&json!([1]), &json!({"0": 1})).len(), 1);
        let (kept, made) = (json!(vec![1; 50]), json!(vec![2; 50]));
        let shown = differences(&kept, &made);
        assert_eq!(shown.len(), SHOWN + 1);
        assert_eq!(shown.last().unwrap(), "and 40 more");
    }
}
