//! One tree for both spellings of the standard, XML and JSON: an element or a
//! key is a node, an attribute is a child, the entries of an array are
//! children of the same name.

use std::fmt;

use quick_xml::events::{BytesStart, Event};
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use crate::Refusal;

/// Deeper than any lab exchange file.
const DEEPEST: usize = 64;

/// An element or a key.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Node {
    pub name: String,
    pub text: String,
    pub children: Vec<Node>,
    /// Whether it was an entry of an array.
    listed: bool,
    /// Whether it is an array under way; only while JSON is read.
    array: bool,
}

impl Node {
    /// The first child of one of these names.
    pub fn get(&self, names: &[&str]) -> Option<&Node> {
        names.iter().find_map(|name| self.children.iter().find(|c| c.name == *name))
    }

    /// The child at the end of a path.
    pub fn at(&self, path: &[&str]) -> Option<&Node> {
        path.iter().try_fold(self, |node, name| node.get(&[name]))
    }

    /// The text of the first child of one of these names; empty where there is none.
    pub fn said(&self, names: &[&str]) -> &str {
        self.get(names).map_or("", |c| c.text.trim())
    }

    /// The entries of a list, in each way that files write it: `<Depths><Depth/></Depths>`,
    /// `"Depths": [{}]` and `"Depths": {"1": {}}`.
    pub fn entries(&self, list: &str, entry: &str) -> Vec<&Node> {
        let mut found = Vec::new();
        for child in &self.children {
            if child.name == entry || child.name == list && child.listed {
                found.push(child);
            } else if child.name == list {
                let named = child.children.iter().any(|c| c.name == entry);
                let each = |c: &&Node| if named { c.name == entry } else { !c.children.is_empty() };
                let inner: Vec<&Node> = child.children.iter().filter(each).collect();
                // `"SoilSamples": {…}` with one sample and no list round it.
                let single = !named && child.children.iter().any(|c| !c.text.is_empty());
                if single { found.push(child) } else { found.extend(inner) }
            }
        }
        found
    }
}

/// Reads XML. Entities other than XML's own five are left as they are
/// written, so that none can swell, and none can fetch.
pub(super) fn xml(text: &str) -> Result<Node, Refusal> {
    const DAMAGED: Refusal = Refusal::Damaged { what: "XML file" };
    let mut reader = quick_xml::Reader::from_str(text);
    let mut open = vec![Node::default()];
    loop {
        match reader.read_event().map_err(|_| DAMAGED)? {
            Event::Start(start) if open.len() < DEEPEST => open.push(begun(&start)),
            Event::Start(_) => return Err(DAMAGED),
            Event::Empty(start) => open.last_mut().ok_or(DAMAGED)?.children.push(begun(&start)),
            Event::End(_) => {
                let node = open.pop().ok_or(DAMAGED)?;
                open.last_mut().ok_or(DAMAGED)?.children.push(node);
            }
            Event::Text(said) => open.last_mut().ok_or(DAMAGED)?.text.push_str(&said),
            Event::CData(said) => open.last_mut().ok_or(DAMAGED)?.text.push_str(&said),
            Event::GeneralRef(entity) => {
                let entity = format!("&{};", &*entity);
                let said = quick_xml::escape::unescape(&entity).unwrap_or((&*entity).into());
                open.last_mut().ok_or(DAMAGED)?.text.push_str(&said);
            }
            Event::Eof => break,
            _ => {}
        }
    }
    let mut top = open.pop().ok_or(DAMAGED)?;
    if !open.is_empty() || top.children.len() != 1 {
        return Err(DAMAGED);
    }
    top.children.pop().ok_or(DAMAGED)
}

fn begun(start: &BytesStart<'_>) -> Node {
    let attribute = |a: quick_xml::events::attributes::Attribute<'_>| Node {
        name: a.key.local_name().as_ref().to_string(),
        text: quick_xml::escape::unescape(&a.value)
            .map_or_else(|_| a.value.to_string(), Into::into),
        ..Node::default()
    };
    Node {
        name: start.local_name().as_ref().to_string(),
        children: start.attributes().flatten().map(attribute).collect(),
        ..Node::default()
    }
}

/// Reads JSON.
pub(super) fn json(text: &str) -> Result<Node, Refusal> {
    serde_json::from_str(text).map_err(|e| Refusal::BrokenJson { line: e.line().max(1) })
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(input: D) -> Result<Node, D::Error> {
        input.deserialize_any(AnyNode)
    }
}

struct AnyNode;

impl AnyNode {
    fn leaf<E>(said: impl fmt::Display) -> Result<Node, E> {
        Ok(Node { text: said.to_string(), ..Node::default() })
    }
}

impl<'de> Visitor<'de> for AnyNode {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Node, E> {
        Ok(Node::default())
    }

    fn visit_bool<E>(self, said: bool) -> Result<Node, E> {
        AnyNode::leaf(said)
    }

    fn visit_i64<E>(self, said: i64) -> Result<Node, E> {
        AnyNode::leaf(said)
    }

    fn visit_u64<E>(self, said: u64) -> Result<Node, E> {
        AnyNode::leaf(said)
    }

    fn visit_f64<E>(self, said: f64) -> Result<Node, E> {
        AnyNode::leaf(crate::decimal::shortest(said))
    }

    fn visit_str<E>(self, said: &str) -> Result<Node, E> {
        AnyNode::leaf(said)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Node, A::Error> {
        let mut list = Node { array: true, ..Node::default() };
        while let Some(entry) = entries.next_element::<Node>()? {
            list.children.push(Node { listed: true, ..entry });
        }
        Ok(list)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Node, A::Error> {
        let mut node = Node::default();
        while let Some((name, value)) = entries.next_entry::<String, Node>()? {
            if value.array {
                let each = value.children.into_iter();
                node.children.extend(each.map(|entry| Node { name: name.clone(), ..entry }));
            } else {
                node.children.push(Node { name, ..value });
            }
        }
        Ok(node)
    }
}
