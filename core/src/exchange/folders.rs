//! Where a file lies on a server, by its name alone.

use super::post::{POST_FOLDER, is_post};
use super::sealed::{LanePart, SealedName};

/// The folder of a file: of a leaf that of its part of a lane, of a message of a pairing the one for those. None for a name
/// that is none of ours.
pub fn folder_of(name: &str) -> Option<String> {
    match is_post(name) {
        true => Some(POST_FOLDER.to_owned()),
        false => SealedName::parse(name).map(|name| LanePart::of(&name).to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leaf_lies_in_the_folder_of_its_part() {
        let lane = format!("{}-0123abcd", "0123456789abcdef".repeat(2));
        for (sequence, first) in [(1, 1), (32, 1), (33, 33)] {
            let name = format!("{lane}-{sequence:08}-fedcba9876543210.leaf");
            assert_eq!(folder_of(&name), Some(format!("{lane}-{first:08}")));
        }
        for odd in ["", "pairing", &lane, "../x"] {
            assert!(folder_of(odd).is_none(), "{odd}");
        }
        let post = "0123456789abcdef-2-fedcba9876543210.pair";
        assert_eq!(folder_of(post).as_deref(), Some(POST_FOLDER));
    }
}
