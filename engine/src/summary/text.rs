//! Blocks as plain text.

use crate::sources::Citation;
use crate::summary::{Block, Line};

/// The blocks as plain text, a blank line between the parts.
pub fn text(blocks: &[Block]) -> String {
    let mut out = String::new();
    for block in blocks {
        match block {
            Block::Title(title) => {
                out.push_str(title);
                out.push('\n');
                out.push_str(&"=".repeat(title.chars().count()));
                out.push_str("\n\n");
            }
            Block::Heading(heading) => {
                out.push_str(heading);
                out.push('\n');
            }
            Block::Paragraph(paragraph) => {
                out.push_str(paragraph);
                out.push_str("\n\n");
            }
            Block::List(lines) => {
                for Line { head, text, tick, .. } in lines {
                    let tick = if *tick { "[ ] " } else { "" };
                    let colon = if head.is_empty() { "" } else { ": " };
                    out.push_str(&format!("- {tick}{head}{colon}{text}\n"));
                }
                out.push('\n');
            }
            Block::Sources(sources) => {
                for Citation { source, .. } in sources {
                    let line = format!("- {} {}", source.title(), source.place());
                    out.push_str(line.trim_end());
                    out.push('\n');
                }
                out.push('\n');
            }
        }
    }
    out.trim_end().to_string() + "\n"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_is_set_off_under_its_heading() {
        let blocks = [
            Block::Title("Plan".into()),
            Block::Heading("Why".into()),
            Block::List(vec![
                Line { text: "One.".into(), ..Line::default() },
                Line { head: "Lime".into(), text: "2 kg".into(), ..Line::default() },
            ]),
        ];
        assert_eq!(text(&blocks), "Plan\n====\n\nWhy\n- One.\n- Lime: 2 kg\n");
    }
}
