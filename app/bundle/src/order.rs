//! Functions that are alike stand next to each other, so that a module is packed smaller.

use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{
    CodeSectionReader, FunctionBody, FunctionSectionReader, Parser, Payload, TypeRef,
};

/// Writes a module anew with its functions in the order of their code.
///
/// # Errors
/// When it is no module.
pub(crate) fn by_likeness(module: &[u8]) -> Result<Vec<u8>, String> {
    let mut imported = 0;
    let mut bodies: Vec<(usize, &[u8])> = Vec::new();
    for payload in Parser::new(0).parse_all(module) {
        match payload.map_err(|why| why.to_string())? {
            Payload::ImportSection(reader) => {
                for import in reader.into_imports() {
                    let import = import.map_err(|why| why.to_string())?;
                    imported += usize::from(matches!(import.ty, TypeRef::Func(_)));
                }
            }
            Payload::CodeSectionEntry(body) => bodies.push((bodies.len(), body.as_bytes())),
            _ => {}
        }
    }
    bodies.sort_by_key(|(_, code)| *code);
    let order: Vec<usize> = bodies.into_iter().map(|(old, _)| old).collect();
    let mut places = vec![0; order.len()];
    for (new, old) in order.iter().enumerate() {
        places[*old] = imported + new;
    }
    let mut written = Module::new();
    Ordered { imported, order, places }
        .parse_core_module(&mut written, Parser::new(0), module)
        .map_err(|why| why.to_string())?;
    Ok(written.finish())
}

struct Ordered {
    imported: usize,
    /// The functions in their new order, by the old.
    order: Vec<usize>,
    /// The new index of each function, in the old order.
    places: Vec<usize>,
}

impl Reencode for Ordered {
    type Error = std::convert::Infallible;

    fn function_index(&mut self, old: u32) -> Result<u32, Error<Self::Error>> {
        let own = (old as usize).checked_sub(self.imported);
        Ok(own.map_or(old, |own| self.places[own] as u32))
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Error<Self::Error>> {
        let types: Vec<u32> = section.into_iter().collect::<Result<_, _>>()?;
        for old in &self.order {
            functions.function(types[*old]);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        code: &mut CodeSection,
        section: CodeSectionReader<'_>,
    ) -> Result<(), Error<Self::Error>> {
        let bodies: Vec<FunctionBody<'_>> = section.into_iter().collect::<Result<_, _>>()?;
        for old in self.order.clone() {
            self.parse_function_body(code, bodies[old].clone())?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use wasm_encoder::{ExportKind, ExportSection, Function, Instruction, TypeSection, ValType};
    use wasmparser::Operator;

    use super::*;

    #[test]
    fn functions_move_and_what_names_them_follows() {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        types.ty().function([], [ValType::I32]);
        let mut functions = FunctionSection::new();
        functions.function(1).function(0);
        let mut exports = ExportSection::new();
        exports.export("gives", ExportKind::Func, 0);
        exports.export("calls", ExportKind::Func, 1);
        let mut code = CodeSection::new();
        let body = |instructions: &[Instruction<'_>]| {
            let mut body = Function::new([]);
            for instruction in instructions {
                body.instruction(instruction);
            }
            body.instruction(&Instruction::End);
            body
        };
        code.function(&body(&[Instruction::I32Const(7)]));
        code.function(&body(&[Instruction::Call(0), Instruction::Drop]));
        let mut module = Module::new();
        module.section(&types).section(&functions).section(&exports).section(&code);

        let ordered = by_likeness(&module.finish()).unwrap();
        wasmparser::validate(&ordered).unwrap();
        let (mut named, mut bodies) = (Vec::new(), Vec::new());
        for payload in Parser::new(0).parse_all(&ordered) {
            match payload.unwrap() {
                Payload::ExportSection(reader) => {
                    named.extend(reader.into_iter().map(|export| export.unwrap().index));
                }
                Payload::CodeSectionEntry(body) => {
                    let first = body.get_operators_reader().unwrap().read().unwrap();
                    bodies.push(first);
                }
                _ => {}
            }
        }
        assert_eq!(named, [1, 0]);
        assert!(
            matches!(
                bodies[..],
                [Operator::Call { function_index: 1 }, Operator::I32Const { value: 7 }]
            ),
            "{bodies:?}"
        );
    }
}
