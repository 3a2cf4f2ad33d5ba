//! The words that two people compare: one list for every language, for their phones may be set to different ones.
//!
//! Each is spelled alike in English and German, and no two are alike: at least three letters apart, as they are
//! written and, roughly, as they sound.

/// One word for each byte.
#[rustfmt::skip]
pub const WORDS: [&str; 256] = [
    "agenda", "album", "algebra", "alibi", "alphabet", "april", "aroma", "atlas", "august",
    "avocado", "bagel", "bandit", "barometer", "basalt", "basis", "bikini", "bonsai",
    "boulevard", "boutique", "boxer", "bravo", "broccoli", "bronze", "bungalow", "bungee",
    "butler", "caravan", "cartoon", "casino", "catering", "champion", "clown", "cobra",
    "cockpit", "cocktail", "comic", "computer", "container", "cowboy", "curling", "december",
    "delta", "detail", "diesel", "digital", "dollar", "domino", "duplex", "dynamo", "echo",
    "elegant", "emblem", "ensemble", "espresso", "event", "export", "fauna", "festival",
    "fiesta", "film", "finale", "finger", "fitness", "fjord", "flair", "flamingo", "folder",
    "folklore", "fondue", "football", "format", "forum", "foxtrot", "frisbee", "gazelle",
    "gentleman", "ginseng", "global", "gold", "gorilla", "gospel", "guru", "habitat",
    "hamburger", "hand", "handball", "hardware", "hobby", "hotel", "hummus", "hybrid", "hydra",
    "idol", "iguana", "internet", "interview", "investor", "jackpot", "jacuzzi", "jeep",
    "jockey", "journal", "karaoke", "ketchup", "keyboard", "kilometer", "kimono",
    "kindergarten", "kiosk", "laptop", "lasso", "lemming", "leopard", "limerick", "liter",
    "lotus", "lynx", "maestro", "magnet", "mandarin", "marathon", "marzipan", "matrix",
    "maximum", "mikado", "moment", "monitor", "motto", "muffin", "museum", "musical", "mustang",
    "name", "nation", "neon", "neutron", "ninja", "nirvana", "nova", "november", "nugget",
    "oboe", "olive", "omega", "optimist", "orange", "oregano", "origami", "outfit", "overall",
    "paddock", "palette", "pampas", "panorama", "papaya", "papyrus", "paradox", "parallel",
    "parka", "partner", "pause", "pergola", "person", "pesto", "pilot", "planet", "plateau",
    "podium", "popcorn", "porridge", "portal", "premier", "prisma", "professor", "pudding",
    "pullover", "puma", "quark", "quasar", "radar", "radius", "regatta", "restaurant", "ritual",
    "route", "rucksack", "rugby", "salami", "salsa", "samurai", "sardine", "schnitzel",
    "scooter", "seminar", "senator", "september", "shampoo", "signal", "skateboard", "sketch",
    "slalom", "snowboard", "software", "sombrero", "spaghetti", "sprint", "squash", "stadium",
    "standard", "strudel", "studio", "sudoku", "sultan", "supernova", "sushi", "swing",
    "symbol", "system", "tablet", "tango", "tapir", "tarot", "telegram", "tempo", "tennis",
    "terminal", "thermometer", "titan", "toaster", "tomahawk", "tornado", "tourist",
    "tradition", "trainer", "trampoline", "transfer", "transport", "trick", "triumph",
    "tsunami", "tundra", "tunnel", "turban", "tutor", "ukulele", "uniform", "ventilator",
    "veranda", "verb", "vitamin", "volleyball", "wagon", "wasabi", "wigwam", "workshop", "yeti",
];

/// The words of four bytes.
pub(super) fn said(numbers: [u8; 4]) -> [&'static str; 4] {
    numbers.map(|number| WORDS[usize::from(number)])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Levenshtein's distance: letters put in, left out or changed.
    fn distance(one: &str, other: &str) -> usize {
        let other: Vec<char> = other.chars().collect();
        let mut row: Vec<usize> = (0..=other.len()).collect();
        for (at, letter) in one.chars().enumerate() {
            let mut before = std::mem::replace(&mut row[0], at + 1);
            for (place, found) in other.iter().enumerate() {
                let changed = before + usize::from(letter != *found);
                before = row[place + 1];
                row[place + 1] = changed.min(before + 1).min(row[place] + 1);
            }
        }
        row[other.len()]
    }

    /// Roughly how a word sounds to an English or a German ear: what either takes for the same is one letter.
    fn sound(word: &str) -> String {
        let alike = [
            ("ph", "f"),
            ("ch", "k"),
            ("ck", "k"),
            ("qu", "kw"),
            ("sch", "s"),
            ("sh", "s"),
            ("th", "t"),
            ("ou", "u"),
            ("oo", "u"),
            ("ee", "i"),
            ("ea", "i"),
            ("y", "i"),
            ("c", "k"),
            ("z", "s"),
            ("v", "f"),
            ("w", "f"),
            ("j", "i"),
            ("d", "t"),
            ("b", "p"),
            ("g", "k"),
            ("x", "ks"),
        ];
        let word = alike.iter().fold(word.to_owned(), |word, (from, to)| word.replace(from, to));
        let mut letters: Vec<char> = word.chars().collect();
        letters.dedup();
        letters.into_iter().collect()
    }

    #[test]
    fn no_two_words_are_alike() {
        for (at, word) in WORDS.iter().enumerate() {
            assert!(word.len() >= 3 && word.bytes().all(|letter| letter.is_ascii_lowercase()));
            for other in &WORDS[..at] {
                assert!(distance(word, other) >= 3, "{word} {other}");
                assert!(distance(&sound(word), &sound(other)) >= 3, "{word} {other}");
            }
        }
        assert!(WORDS.is_sorted());
    }

    #[test]
    fn the_distance_is_levenshteins() {
        for (one, other, apart) in
            [("kitten", "sitting", 3), ("", "abc", 3), ("flaw", "lawn", 2), ("a", "a", 0)]
        {
            assert_eq!(distance(one, other), apart, "{one} {other}");
        }
    }
}
