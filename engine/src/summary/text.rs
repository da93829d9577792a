//! Blocks as plain text.

use crate::summary::Block;

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
            Block::List(items) | Block::Sources(items) => {
                for item in items {
                    out.push_str("- ");
                    out.push_str(item);
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
            Block::List(vec!["One.".into(), "Two.".into()]),
        ];
        assert_eq!(text(&blocks), "Plan\n====\n\nWhy\n- One.\n- Two.\n");
    }
}
