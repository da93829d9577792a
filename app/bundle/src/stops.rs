//! Where the program can only stop, it stops without a word.
//!
//! A fault in Rust code ends the program for good, and the page says the same of every one. So what
//! leads to such an end is left out of the linked module: the numbers, places and sentences that a
//! panic is given, and with them all that would put them together. In its place stands one call of
//! what tells the page, or nothing but the trap that always followed.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use wasm_encoder::{CustomSection, Section};
use wasmparser::{
    BinaryReaderError, ExternalKind, FunctionBody, KnownCustom, Linking, Operator, Parser, Payload,
    RelocationType, SymbolInfo, TypeRef,
};

/// How many bytes the linker leaves for an index, so that it can be changed.
const ROOM: usize = 5;
const NOP: u8 = 0x01;
const TRAP: u8 = 0x00;

/// How the exports of streams begin, which the framework's half for servers brings along. The page
/// opens none, so the browser never has one of which it could call anything.
const OF_STREAMS: [&str; 2] = ["intounderlying", "__wbg_intounderlying"];

/// What is known of a linked module.
#[derive(Default)]
struct Linked<'a> {
    imported: u32,
    bodies: Vec<FunctionBody<'a>>,
    /// Where the code's own offsets begin, and the number of its section.
    code: (usize, u32),
    exports: Vec<(&'a str, u32)>,
    symbols: Vec<SymbolInfo<'a>>,
    records: Records<'a>,
}

/// The linker's records of the code.
#[derive(Default)]
struct Records<'a> {
    /// The whole section.
    section: Range<usize>,
    name: &'a str,
    /// Each of them: where in the module it points to, and how it is written.
    entries: Vec<(usize, &'a [u8])>,
}

/// Puts a call of the exported function `told`, or nothing, in the place of every call that can
/// only end the program.
///
/// # Errors
/// When the module is not what the linker writes.
pub(crate) fn shorten(module: &[u8], told: Option<&str>) -> Result<Vec<u8>, String> {
    let damaged = |why: BinaryReaderError| why.to_string();
    let linked = Linked::of(module).map_err(damaged)?;
    let told = told.map(|name| linked.function(name)).transpose()?;
    let ends = linked.ends().map_err(damaged)?;
    let never_called = linked.never_called();
    let mut whole = module.to_vec();
    let mut gone: Vec<Range<usize>> = Vec::new();
    let mut turned: BTreeSet<usize> = BTreeSet::new();
    for (function, body) in (linked.imported..).zip(&linked.bodies) {
        if never_called.contains(&function) {
            let code = body.get_operators_reader().map_err(damaged)?.original_position() as usize;
            // The last byte ends the body.
            let code = code..place(&body.range()).end - 1;
            whole[code.clone()].fill(NOP);
            whole[code.start] = TRAP;
            gone.push(code);
            continue;
        }
        for (from, call) in last_words(body, &ends).map_err(damaged)? {
            let index = call + 1..call + 1 + ROOM;
            whole[from..call].fill(NOP);
            gone.push(from..call);
            if let Some((function, _)) = told {
                whole[index.clone()].copy_from_slice(&padded(function));
                turned.insert(index.start);
            } else {
                whole[call..index.end].fill(NOP);
                gone.push(index);
            }
        }
    }
    let Records { section, name, .. } = &linked.records;
    let symbol = told.map_or(0, |(_, symbol)| symbol);
    let data = linked.records_without(&gone, &turned, symbol);
    let mut records = Vec::new();
    CustomSection { name: (*name).into(), data: data.into() }.append_to(&mut records);
    whole.splice(section.clone(), records);
    Ok(whole)
}

impl<'a> Linked<'a> {
    fn of(module: &'a [u8]) -> Result<Linked<'a>, BinaryReaderError> {
        let mut linked = Linked::default();
        let (mut number, mut end) = (0, 8);
        for payload in Parser::new(0).parse_all(module) {
            let payload = payload?;
            let section = payload.as_section().map(|(_, range)| place(&range));
            match &payload {
                Payload::ImportSection(reader) => {
                    for import in reader.clone().into_imports() {
                        linked.imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                    }
                }
                Payload::ExportSection(reader) => {
                    for export in reader.clone() {
                        let export = export?;
                        if export.kind == ExternalKind::Func {
                            linked.exports.push((export.name, export.index));
                        }
                    }
                }
                Payload::CodeSectionStart { range, .. } => {
                    linked.code = (place(range).start, number);
                }
                Payload::CodeSectionEntry(body) => linked.bodies.push(body.clone()),
                Payload::CustomSection(custom) => match custom.as_known() {
                    KnownCustom::Linking(reader) => {
                        for part in reader {
                            if let Linking::SymbolTable(symbols) = part? {
                                linked.symbols = symbols.into_iter().collect::<Result<_, _>>()?;
                            }
                        }
                    }
                    KnownCustom::Reloc(reader) if reader.section_index() == linked.code.1 => {
                        let stop = place(&custom.range()).end;
                        let all: Vec<_> =
                            reader.entries().into_iter_with_offsets().collect::<Result<_, _>>()?;
                        let starts = all.iter().skip(1).map(|(at, _)| *at as usize).chain([stop]);
                        let entries = all.iter().zip(starts).map(|((at, entry), next)| {
                            let written = &module[*at as usize..next];
                            (linked.code.0 + entry.offset as usize, written)
                        });
                        linked.records = Records {
                            section: end..stop,
                            name: custom.name(),
                            entries: entries.collect(),
                        };
                    }
                    _ => {}
                },
                _ => {}
            }
            if let Some(section) = section {
                number += 1;
                end = section.end;
            }
        }
        Ok(linked)
    }

    /// The function exported under a name, behind which the binder puts a mark, and its symbol.
    fn function(&self, name: &str) -> Result<(u32, u32), String> {
        let missing = || format!("the module has no function {name}");
        let named = |export: &str| export.rsplit_once('_').is_some_and(|(own, _)| own == name);
        let &(_, function) = self.exports.iter().find(|e| named(e.0)).ok_or_else(missing)?;
        let is_it = |symbol: &SymbolInfo<'_>| matches!(symbol, SymbolInfo::Func { index, .. } if *index == function);
        let symbol = (0..).zip(&self.symbols).find(|(_, symbol)| is_it(symbol));
        Ok((function, symbol.ok_or_else(missing)?.0))
    }

    /// What is exported and yet never called.
    fn never_called(&self) -> BTreeSet<u32> {
        let of_streams = |name: &str| OF_STREAMS.iter().any(|begin| name.starts_with(begin));
        self.exports.iter().filter(|e| of_streams(e.0)).map(|e| e.1).collect()
    }

    /// The functions after whose call the compiler expects nothing more, and that ask nothing of
    /// the browser: what throws an error there is left as it is.
    fn ends(&self) -> Result<BTreeSet<u32>, BinaryReaderError> {
        let mut asking: BTreeSet<u32> = (0..self.imported).collect();
        let mut goes_on = BTreeSet::new();
        let mut callers: BTreeMap<u32, Vec<u32>> = BTreeMap::new();
        for (caller, body) in (self.imported..).zip(&self.bodies) {
            let mut before = None;
            for operator in body.get_operators_reader()? {
                let operator = operator?;
                if !matches!(operator, Operator::Unreachable) {
                    goes_on.extend(before);
                }
                before = None;
                if let Operator::Call { function_index } = operator {
                    callers.entry(function_index).or_default().push(caller);
                    before = Some(function_index);
                }
            }
        }
        let mut found: Vec<u32> = asking.iter().copied().collect();
        while let Some(function) = found.pop() {
            let new = callers.get(&function).into_iter().flatten();
            found.extend(new.copied().filter(|caller| asking.insert(*caller)));
        }
        let ends = |f: &u32| !goes_on.contains(f) && !asking.contains(f);
        Ok(callers.into_keys().filter(ends).collect())
    }

    /// The content of the section of records, without some and with others turned to a symbol.
    fn records_without(
        &self,
        gone: &[Range<usize>],
        turned: &BTreeSet<usize>,
        symbol: u32,
    ) -> Vec<u8> {
        let mut count = 0;
        let mut kept = Vec::new();
        for (offset, written) in &self.records.entries {
            // Both go from the module's beginning to its end.
            let next = gone.partition_point(|range| range.end <= *offset);
            if gone.get(next).is_some_and(|range| range.contains(offset)) {
                continue;
            }
            count += 1;
            if turned.contains(offset) {
                kept.push(RelocationType::FunctionIndexLeb as u8);
                kept.extend(padded((offset - self.code.0) as u32));
                kept.extend(padded(symbol));
            } else {
                kept.extend_from_slice(written);
            }
        }
        [&padded(self.code.1)[..], &padded(count)[..], &kept[..]].concat()
    }
}

/// Each call of one of `ends` in a body, with the place from which on the program only prepares
/// for it: nothing before the call can be left out past a place where ways part or meet, where
/// another function is called, or where the stack of the program moves.
fn last_words(
    body: &FunctionBody<'_>,
    ends: &BTreeSet<u32>,
) -> Result<Vec<(usize, usize)>, BinaryReaderError> {
    let mut found = Vec::new();
    let mut reader = body.get_operators_reader()?;
    let mut from = reader.original_position() as usize;
    while !reader.eof() {
        let at = reader.original_position() as usize;
        let operator = reader.read()?;
        if let Operator::Call { function_index } = operator
            && ends.contains(&function_index)
        {
            found.push((from, at));
        }
        if !only_prepares(&operator) {
            from = reader.original_position() as usize;
        }
    }
    Ok(found)
}

/// Whether an operator does no more than move numbers between the stack, locals and memory.
fn only_prepares(operator: &Operator<'_>) -> bool {
    use Operator as O;
    matches!(
        operator,
        O::LocalGet { .. }
            | O::LocalSet { .. }
            | O::LocalTee { .. }
            | O::GlobalGet { .. }
            | O::I32Const { .. }
            | O::I64Const { .. }
            | O::F64Const { .. }
            | O::I32Load { .. }
            | O::I32Load8U { .. }
            | O::I32Load16U { .. }
            | O::I64Load { .. }
            | O::F64Load { .. }
            | O::I32Store { .. }
            | O::I32Store8 { .. }
            | O::I32Store16 { .. }
            | O::I64Store { .. }
            | O::F64Store { .. }
            | O::I32Add
            | O::I32Sub
            | O::I32Mul
            | O::I32Shl
            | O::I32And
            | O::I32Or
            | O::I64Or
            | O::I64Shl
            | O::I64ExtendI32U
            | O::I32WrapI64
            | O::Select
            | O::Drop
    )
}

/// An index in all the room that the linker leaves for it.
fn padded(index: u32) -> [u8; ROOM] {
    std::array::from_fn(|i| {
        let bits = (index >> (7 * i)) as u8 & 0x7F;
        if i + 1 < ROOM { bits | 0x80 } else { bits }
    })
}

fn place(range: &Range<u64>) -> Range<usize> {
    range.start as usize..range.end as usize
}

#[cfg(test)]
mod tests {
    use wasm_encoder::{
        CodeSection, ExportKind, ExportSection, Function, FunctionSection, Instruction,
        LinkingSection, Module, SymbolTable, TypeSection, ValType,
    };

    use super::*;

    /// A linked module: 0, exported as `first`, gives a number or, for a reason that it writes down, calls 1, which ends
    /// it all; 2 tells the page.
    fn linked(first: &str) -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        types.ty().function([ValType::I32], []);
        types.ty().function([ValType::I32], [ValType::I32]);
        let mut functions = FunctionSection::new();
        functions.function(2).function(1).function(0);
        let mut exports = ExportSection::new();
        exports.export(first, ExportKind::Func, 0);
        exports.export("stopped_1a2b", ExportKind::Func, 2);
        let mut code = CodeSection::new();
        // Locals, block, local.get 0, br_if 0, the reason, a call with room, unreachable.
        let mut gives = vec![0, 0x02, 0x40, 0x20, 0, 0x0D, 0, 0x41];
        gives.extend(padded(99));
        gives.push(0x10);
        gives.extend(padded(1));
        gives.extend([0x00, 0x0B, 0x20, 0, 0x0B]);
        code.raw(&gives);
        let mut ends = Function::new([]);
        ends.instruction(&Instruction::Unreachable).instruction(&Instruction::End);
        let mut told = Function::new([]);
        told.instruction(&Instruction::End);
        code.function(&ends).function(&told);
        let mut symbols = SymbolTable::new();
        for function in 0..3 {
            symbols.function(SymbolTable::WASM_SYM_EXPLICIT_NAME, function, Some("f"));
        }
        let mut linking = LinkingSection::new();
        linking.symbol_table(&symbols);
        // Of the reason and of the call, behind the number of functions and the body's length.
        let records = [3, 2, 4, 10, 0, 0, 0, 16, 1];
        let mut module = Module::new();
        module.section(&types).section(&functions).section(&exports).section(&code);
        module.section(&linking);
        module.section(&CustomSection { name: "reloc.CODE".into(), data: (&records[..]).into() });
        module.finish()
    }

    /// The first function's code, and how many records of the code there are.
    fn read(module: &[u8]) -> (Vec<u8>, usize) {
        wasmparser::validate(module).unwrap();
        let linked = Linked::of(module).unwrap();
        (linked.bodies[0].as_bytes().to_vec(), linked.records.entries.len())
    }

    #[test]
    fn an_end_is_told_in_one_call_and_its_reason_is_gone() {
        assert_eq!(read(&linked("gives")).1, 2);
        let (code, records) = read(&shorten(&linked("gives"), Some("stopped")).unwrap());
        let call = [&[0x10][..], &padded(2), &[0x00, 0x0B]].concat();
        let nothing = [NOP; ROOM + 1];
        assert_eq!(code[1..7], [0x02, 0x40, 0x20, 0, 0x0D, 0], "what leads there must stay");
        assert_eq!(code[7..13], nothing);
        assert_eq!(code[13..21], call);
        assert_eq!(records, 1);
    }

    #[test]
    fn what_nobody_can_call_is_the_trap_alone() {
        let streams = linked("intounderlyingsource_pull_1a2b");
        let (code, records) = read(&shorten(&streams, Some("stopped")).unwrap());
        assert_eq!(code[..3], [0, TRAP, NOP]);
        assert_eq!(code.last(), Some(&0x0B));
        assert_eq!(records, 0);
    }

    #[test]
    fn an_end_that_nobody_is_told_of_is_the_trap_alone() {
        let (code, records) = read(&shorten(&linked("gives"), None).unwrap());
        assert_eq!(code[7..19], [NOP; 2 * (ROOM + 1)]);
        assert_eq!(code[19..], [0x00, 0x0B, 0x20, 0, 0x0B]);
        assert_eq!(records, 0);
    }
}
