//! Takes out of a page what it does not need: a handbook has a thousand pages that share most of what stands around their words.
//!
//! In: a page as it was set, and where it goes. Out: the same page in fewer bytes. Leaves to others: what pages of one file share (`forms`).

use super::figures::lamp;

/// The patterns of the shared drawings, and the class of what the style sheet fills with each.
const PATTERNS: [(&str, &str); 4] =
    [("hatch", "hatched"), ("hatch-blue", "togo"), ("weave", "weave"), ("mesh", "mesh")];

/// Shared drawings of which none is left.
const NO_DRAWINGS: &str = "<svg class=\"out-of-sight\" aria-hidden=\"true\"><defs>\n\n</defs></svg>\n";

/// The page without shapes and patterns that nothing on it shows, and with short ways to its neighbours.
pub fn lean(html: String, address: &str, root: &str) -> String {
    short_ways(without_idle_patterns(lamp::without_idle_shapes(html)), address, root)
}

fn without_idle_patterns(mut html: String) -> String {
    for (id, class) in PATTERNS {
        let start = html.find(&format!("<pattern id=\"{id}\""));
        let end = start.and_then(|start| Some(start + html.get(start..)?.find("</pattern>\n")? + "</pattern>\n".len()));
        if let (Some(start), Some(end)) = (start, end) {
            let pattern: String = html.drain(start..end).collect();
            // A word in a text that is the same keeps a pattern that nothing is filled with: that does no harm.
            if html.contains(class) {
                html.insert_str(start, &pattern);
            }
        }
    }
    // Where nothing is left, neither is what held it.
    html.replacen(NO_DRAWINGS, "", 1)
}

/// Links into the page's own folder, and into the one around it, go straight there and not by way of the top.
fn short_ways(mut html: String, address: &str, root: &str) -> String {
    let mut way = "";
    let mut folder = address;
    for _ in 0..2 {
        let Some((around, _)) = folder.rsplit_once('/') else { break };
        html = html.replace(&format!("href=\"{root}{around}/"), &format!("href=\"{way}"));
        folder = around;
        way = "../";
    }
    html
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pattern_stays_where_something_is_filled_with_it() {
        let defs = "<defs>\n<pattern id=\"hatch\"><line class=\"hatch-line\"/></pattern>\n<pattern id=\"mesh\"><path class=\"mesh-line\"/></pattern>\n</defs>";
        assert_eq!(lean(defs.to_owned(), "a.html", ""), "<defs>\n</defs>");
        let filled = format!("{defs}<rect class=\"bar hatched\"/>");
        assert!(lean(filled.clone(), "a.html", "").contains("id=\"hatch\""));
        assert!(!lean(filled, "a.html", "").contains("id=\"mesh\""));
    }

    #[test]
    fn a_way_goes_straight_to_a_neighbour() {
        let html = "<a href=\"../../faults/a/b.html#x\"><a href=\"../../faults/a.html\"><a href=\"../../jobs/c.html\">";
        let short = "<a href=\"b.html#x\"><a href=\"../a.html\"><a href=\"../../jobs/c.html\">";
        assert_eq!(lean(html.to_owned(), "faults/a/z.html", "../../"), short);
        assert_eq!(lean("<a href=\"jobs/c.html\">".to_owned(), "index.html", ""), "<a href=\"jobs/c.html\">");
        let deep = "<a href=\"../../../fr/faults/a/b.html\"><a href=\"../../../faults/a/b.html\">";
        let short = "<a href=\"b.html\"><a href=\"../../../faults/a/b.html\">";
        assert_eq!(lean(deep.to_owned(), "fr/faults/a/z.html", "../../../"), short);
    }
}
