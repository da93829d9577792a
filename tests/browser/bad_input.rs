//! What is no soil report gets a message that says so, and is not lost.

use emberloam_tests::page::{A_SURPLUS, Page, TROUBLE};

/// Each kind of bad text, as JavaScript that makes it.
const BAD: [(&str, &str); 6] = [
    ("nothing", "''"),
    (
        "prose",
        "'Dear neighbour, thank you for the lovely afternoon. We sat under the old tree and \
         talked about the summer. The children would like to come again.\\nWith kind regards'",
    ),
    (
        "a binary file",
        "'%PDF-1.7\\n' + Array.from({ length: 4000 }, (_, i) => \
         String.fromCharCode(1 + (i * 37) % 30, 0xfffd, 128 + (i * 53) % 120)).join('')",
    ),
    ("NUL bytes", "'pH\\u00006.5\\u0000\\u0000\\nPhosphorus\\u0000 30 ppm\\u0000\\n'"),
    ("thirteen megabytes", "'Phosphorus 30 ppm\\n'.repeat(750000)"),
    (
        "a table without soil words",
        "'Name\\tColour\\tPrice\\nChair\\tblue\\t49\\nTable\\tgreen\\t120\\nLamp\\tred\\t35\\n'",
    ),
];

#[test]
fn every_bad_text_gets_its_own_message_and_stays() {
    let page = Page::open("bad-input");
    let mut said: Vec<(&str, String)> = Vec::new();
    for (kind, text) in BAD {
        if kind == "nothing" {
            // Something first, so that taking it away is an act of the person.
            page.paste("x");
        }
        let before = said.last().map_or("", |(_, message)| message.as_str()).to_owned();
        let before = if before.is_empty() { page.browser.text(TROUBLE) } else { before };
        page.put(text);
        let (message, took) = page.wait_for_trouble(&before);
        println!("{kind} ({took} ms): {message}");
        assert!(page.still_holds_what_was_put(), "{kind}: the text was changed");
        assert_eq!(page.path(), "", "{kind}: got an answer");
        if let Some((other, _)) = said.iter().find(|(_, earlier)| *earlier == message) {
            panic!("{kind} and {other} get the same message: {message}");
        }
        said.push((kind, message));
    }
    page.paste(A_SURPLUS);
    page.wait_for_answer();
    assert!(!page.browser.shows(TROUBLE), "a good report still shows the last message");
}
