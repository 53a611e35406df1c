//! How much room words take in a drawing, and how they are broken into lines.
//!
//! SVG does not wrap, so a drawing has to know beforehand how wide its words will be. In: words and a type size. Out: widths
//! in the drawing's units, and lines that fit. The widths are those of the theme's face; other faces are allowed for by
//! a little slack, but a much wider one may still touch its neighbour.

/// How heavy the type is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Weight {
    /// 400.
    Plain,
    /// 700.
    Bold,
}

// Advance widths of U+0020 to U+007E in thousandths of the type size: Atkinson Hyperlegible Next (SIL OFL 1.1), table `hmtx`
// of the variable font at weight 400 and 700. Digits are given the width of the widest, as pages set them in columns.
const PLAIN: [u16; 95] = [
    280, 286, 301, 651, 592, 919, 731, 160, 299, 299, 485, 606, 210, 362, 210, 387, 648, 648, 648, 648, 648, 648, 648,
    648, 648, 648, 210, 210, 553, 628, 553, 480, 778, 626, 613, 645, 669, 569, 552, 694, 694, 392, 512, 631, 541, 824,
    693, 714, 592, 724, 614, 592, 558, 690, 593, 856, 623, 575, 607, 317, 387, 344, 552, 372, 243, 525, 566, 485, 564,
    538, 314, 558, 550, 252, 245, 492, 262, 845, 550, 548, 566, 574, 349, 471, 326, 540, 461, 684, 481, 449, 460, 344,
    237, 344, 555,
];
const BOLD: [u16; 95] = [
    312, 303, 390, 765, 610, 969, 725, 210, 335, 335, 485, 595, 271, 373, 272, 440, 659, 659, 659, 659, 659, 659, 659,
    659, 659, 659, 272, 272, 569, 612, 569, 547, 781, 678, 643, 658, 688, 597, 566, 718, 701, 424, 561, 663, 552, 858,
    717, 746, 629, 756, 650, 610, 607, 686, 644, 886, 685, 650, 618, 340, 440, 344, 582, 400, 288, 552, 596, 510, 596,
    563, 365, 593, 571, 300, 259, 555, 318, 882, 571, 576, 596, 599, 376, 508, 376, 567, 530, 740, 539, 521, 505, 381,
    254, 381, 537,
];

/// Other faces are up to this much wider.
const SLACK: f64 = 1.04;

/// How wide `text` is at this type size, in the unit of the size.
pub(super) fn width(text: &str, weight: Weight, size: f64) -> f64 {
    let thousandths: u32 = text.chars().map(|c| u32::from(advance(c, weight))).sum();
    f64::from(thousandths) / 1000.0 * size * SLACK
}

/// `text` in at most `lines` lines of at most `room`; what does not fit ends in "…".
///
/// A line has one letter at least, even where that is wider than `room`. Breaks at spaces, after hyphens only where the writer put a space; a word longer than a line is broken inside.
pub(super) fn wrap(text: &str, weight: Weight, size: f64, room: f64, lines: usize) -> Vec<String> {
    let mut set: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match set.last_mut() {
            Some(line) if width(&format!("{line} {word}"), weight, size) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => set.extend(pieces(word, weight, size, room)),
        }
    }
    if set.len() > lines {
        set.truncate(lines);
        if let Some(last) = set.last_mut() {
            *last = shortened(last, weight, size, room);
        }
    }
    set
}

/// `text` on one line of at most `room`, shortened if need be; nothing if not even a letter fits.
pub(super) fn fitted(text: &str, weight: Weight, size: f64, room: f64) -> Option<String> {
    wrap(text, weight, size, room, 1).into_iter().next().filter(|line| width(line, weight, size) <= room)
}

/// A word cut into pieces that fit; a mark stays with the letter it sits on.
fn pieces(word: &str, weight: Weight, size: f64, room: f64) -> Vec<String> {
    let mut cut = vec![String::new()];
    for c in word.chars() {
        let Some(piece) = cut.last_mut() else { break };
        let grown = format!("{piece}{c}");
        if piece.is_empty() || width(&grown, weight, size) <= room {
            *piece = grown;
        } else {
            cut.push(c.to_string());
        }
    }
    cut
}

/// The line with "…" at its end, shortened until both fit.
fn shortened(line: &str, weight: Weight, size: f64, room: f64) -> String {
    let mut kept = line.to_owned();
    loop {
        let whole = format!("{}…", kept.trim_end_matches([' ', ',', ';', ':', '.', '…']));
        if kept.is_empty() || width(&whole, weight, size) <= room {
            return whole;
        }
        kept.pop();
    }
}

fn advance(c: char, weight: Weight) -> u16 {
    let table = match weight {
        Weight::Plain => &PLAIN,
        Weight::Bold => &BOLD,
    };
    let known = (c as usize).checked_sub(0x20).and_then(|index| table.get(index));
    known.copied().unwrap_or(match c {
        '\u{300}'..='\u{36f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' => 0,
        '\u{fe00}'..='\u{fe0f}' => 0,
        '\u{a0}' => 312,
        '‘' | '’' => 269,
        'ß'..='ÿ' => 600,
        // Anything else is set in a face that is not known: the widest Latin capital, or a full square.
        '\u{80}'..='\u{2e7f}' => 780,
        _ => 1000,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_are_those_of_the_face() {
        // 626 + 613 + 645 thousandths, read from the font's own table.
        assert!((width("ABC", Weight::Plain, 10.0) / SLACK - 18.84).abs() < 1e-9);
        assert!(width("Wire", Weight::Bold, 14.0) > width("Wire", Weight::Plain, 14.0));
    }

    #[test]
    fn words_wrap_and_the_last_line_says_that_there_was_more() {
        assert_eq!(wrap("Worn under  the barrel", Weight::Plain, 14.0, 300.0, 2), ["Worn under the barrel"]);
        assert_eq!(wrap("Worn under the barrel", Weight::Plain, 14.0, 84.0, 2), ["Worn under", "the barrel"]);
        assert_eq!(
            wrap("Worn under the barrel, now and then", Weight::Plain, 14.0, 84.0, 2),
            ["Worn under", "the barrel…"]
        );
        assert!(wrap(" ", Weight::Plain, 14.0, 84.0, 2).is_empty());
    }

    #[test]
    fn no_line_is_wider_than_its_room() {
        let awkward = "Donaudampfschifffahrtsgesellschaftskapitän 漢字漢字漢字漢字漢字漢字 אבגדהוזחטיכלמנסעפצקרשת e\u{301}e\u{301}";
        for room in [30.0, 60.0, 110.0] {
            for line in wrap(awkward, Weight::Bold, 14.0, room, 4) {
                assert!(width(&line, Weight::Bold, 14.0) <= room, "{line} in {room}");
            }
        }
    }
}
