//! The functions of a WebAssembly module in an order in which they compress well.

use std::collections::HashMap;

use anyhow::{Result, anyhow};
use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{
    CodeSectionReader, CustomSectionReader, FunctionBody, FunctionSectionReader, Parser, Payload,
    TypeRef,
};

/// Puts functions with like code beside each other, where gzip with its window of 32 kB finds what
/// they have in common. wasm-bindgen leaves them by size.
pub(crate) fn by_likeness(wasm: &[u8]) -> Result<Vec<u8>> {
    let mut order = Order::of(wasm)?;
    let mut module = Module::new();
    utils::parse_core_module(&mut order, &mut module, Parser::new(0), wasm)
        .map_err(|error| anyhow!("cannot arrange the module: {error}"))?;
    Ok(module.finish())
}

/// Bytes that are looked at together.
const PIECE: usize = 6;
/// Most marks of one function.
const MARKS: usize = 128;
/// A mark that so many functions have tells nothing.
const COMMON: usize = 2000;

/// What tells code from other code: of all its pieces, those with the least hashes, so that of like
/// code the same are taken.
fn marks(code: &[u8]) -> Vec<u64> {
    let hash = |piece: &[u8]| {
        let number = piece
            .iter()
            .fold(0, |sum, byte| sum << 8 | u64::from(*byte));
        number.wrapping_mul(0x9e37_79b9_7f4a_7c15).rotate_right(32)
    };
    let mut marks: Vec<u64> = code.windows(PIECE).map(hash).collect();
    marks.sort_unstable();
    marks.dedup();
    marks.truncate(MARKS);
    marks
}

/// An order of pieces of code: each is followed by the one, of those left, that is most like it; by
/// the first of those left where none is.
fn chained(codes: &[&[u8]]) -> Vec<u32> {
    let marks: Vec<Vec<u64>> = codes.iter().map(|code| marks(code)).collect();
    let mut having: HashMap<u64, Vec<usize>> = HashMap::new();
    for (i, marks) in marks.iter().enumerate() {
        for mark in marks {
            having.entry(*mark).or_default().push(i);
        }
    }
    having.retain(|_, places| (2..COMMON).contains(&places.len()));

    let mut is_placed = vec![false; codes.len()];
    let mut order = Vec::with_capacity(codes.len());
    let mut shared = vec![0_u32; codes.len()];
    let mut rest = 0..codes.len();
    let mut next = rest.next();
    while let Some(here) = next {
        is_placed[here] = true;
        order.push(here as u32);
        shared.fill(0);
        for place in marks[here]
            .iter()
            .filter_map(|mark| having.get(mark))
            .flatten()
        {
            shared[*place] += 1;
        }
        // The larger of two, which has more marks, is likely to share more by chance.
        let likeness = |i: usize| f64::from(shared[i]) / (marks[i].len() + 32) as f64;
        next = (0..codes.len())
            .filter(|i| shared[*i] > 0 && !is_placed[*i])
            .max_by(|a, b| likeness(*a).total_cmp(&likeness(*b)))
            .or_else(|| rest.find(|i| !is_placed[*i]));
    }
    order
}

/// Where the functions go.
struct Order {
    /// Functions that are imported; they come first and stay.
    imported: u32,
    /// The module's own functions in their new order: places in the old one.
    old_places: Vec<u32>,
    /// For each place in the old order that in the new.
    new_places: Vec<u32>,
}

impl Order {
    fn of(wasm: &[u8]) -> Result<Self> {
        let mut imported = 0;
        let mut codes = Vec::new();
        for payload in Parser::new(0).parse_all(wasm) {
            match payload? {
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                    }
                }
                Payload::CodeSectionEntry(body) => codes.push(&wasm[body.range()]),
                _ => {}
            }
        }
        let old_places = chained(&codes);
        let mut new_places = vec![0; old_places.len()];
        for (new, old) in (0..).zip(&old_places) {
            new_places[*old as usize] = new;
        }
        Ok(Self {
            imported,
            old_places,
            new_places,
        })
    }

    /// Items of a section, one for each of the module's own functions, in their new order.
    fn arranged<T: Clone>(
        &self,
        items: impl IntoIterator<Item = wasmparser::Result<T>>,
    ) -> Result<Vec<T>, Error> {
        let items: Vec<T> = items.into_iter().collect::<wasmparser::Result<_>>()?;
        let places = self.old_places.iter();
        Ok(places.map(|old| items[*old as usize].clone()).collect())
    }
}

impl Reencode for Order {
    type Error = std::convert::Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Error> {
        let own = function.checked_sub(self.imported);
        let new = own.map(|old| self.imported + self.new_places[old as usize]);
        Ok(new.unwrap_or(function))
    }

    /// Names and the like, which only tools read, are left out.
    fn parse_custom_section(
        &mut self,
        _module: &mut Module,
        _section: CustomSectionReader<'_>,
    ) -> Result<(), Error> {
        Ok(())
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Error> {
        for ty in self.arranged(section)? {
            functions.function(self.type_index(ty)?);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        code: &mut CodeSection,
        section: CodeSectionReader<'_>,
    ) -> Result<(), Error> {
        for body in self.arranged::<FunctionBody<'_>>(section)? {
            self.parse_function_body(code, body)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        EntityType, ExportKind, ExportSection, Function, ImportSection, TypeSection,
    };

    /// An imported function and three of its own, each with its instructions; `places` says where
    /// each of these stands. The second calls the last, which is exported.
    fn module(places: [u32; 3]) -> Module {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import("page", "draw", EntityType::Function(0));
        let mut functions = FunctionSection::new();
        functions.function(0).function(0).function(0);
        let mut exports = ExportSection::new();
        exports.export("last", ExportKind::Func, 1 + places[2]);
        let adds = |times: i32| {
            let mut function = Function::new([]);
            for i in 0..times {
                function.instructions().i32_const(900 + i).drop();
            }
            function.instructions().end();
            function
        };
        let mut calls = Function::new([]);
        calls.instructions().call(1 + places[2]).call(0).end();
        let bodies = [adds(20), calls, adds(15)];
        let mut code = CodeSection::new();
        for place in 0..3 {
            let at = places.iter().position(|p| *p == place).unwrap();
            code.function(&bodies[at]);
        }
        let mut module = Module::new();
        module.section(&types).section(&imports).section(&functions);
        module.section(&exports).section(&code);
        module
    }

    #[test]
    fn like_functions_stand_together_and_are_called_as_before() {
        let arranged = by_likeness(&module([0, 1, 2]).finish()).unwrap();
        assert_eq!(arranged, module([0, 2, 1]).finish());
    }

    #[test]
    fn every_function_has_its_place() {
        let codes: [&[u8]; 5] = [b"", b"quench", b"temper it twice", b"temper", b"temper it"];
        assert_eq!(chained(&codes), [0, 1, 2, 4, 3]);
    }

    #[test]
    fn what_is_no_module_is_an_error() {
        assert!(by_likeness(b"quench").is_err());
    }
}
