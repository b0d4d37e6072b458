//! The functions of a WebAssembly module in an order in which they compress well.

use std::collections::HashMap;

use anyhow::{Context, Result};
use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{
    CodeSectionReader, FunctionBody, FunctionSectionReader, KnownCustom, Name, Parser, Payload,
    TypeRef,
};

/// Puts functions with like names, which have like code, beside each other, where gzip with its
/// window of 32 kB finds what they have in common. The names themselves are left out.
pub(crate) fn by_name(wasm: &[u8]) -> Result<Vec<u8>> {
    let mut order = Order::of(wasm).context("cannot read the module")?;
    let mut module = Module::new();
    utils::parse_core_module(&mut order, &mut module, Parser::new(0), wasm)
        .map_err(|error| anyhow::anyhow!("cannot arrange the module: {error}"))?;
    Ok(module.finish())
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
        let (mut imported, mut own) = (0, 0);
        let mut names = HashMap::new();
        for payload in Parser::new(0).parse_all(wasm) {
            match payload? {
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                    }
                }
                Payload::FunctionSection(functions) => own = functions.count(),
                Payload::CustomSection(section) => {
                    let KnownCustom::Name(parts) = section.as_known() else {
                        continue;
                    };
                    for part in parts {
                        if let Name::Function(functions) = part? {
                            for function in functions {
                                let function = function?;
                                names.insert(function.index, function.name);
                            }
                        }
                    }
                }
                _ => {}
            }
        }
        let mut old_places: Vec<u32> = (0..own).collect();
        old_places.sort_by_key(|place| names.get(&(imported + place)));
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

    fn parse_custom_section(
        &mut self,
        module: &mut Module,
        section: wasmparser::CustomSectionReader<'_>,
    ) -> Result<(), Error> {
        match section.as_known() {
            KnownCustom::Name(_) => Ok(()),
            _ => utils::parse_custom_section(self, module, section),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        EntityType, ExportKind, ExportSection, Function, ImportSection, NameMap, NameSection,
        TypeSection,
    };

    /// An imported function and two of its own: each calls the one before it, and the last is
    /// exported. `swapped` has the two the other way round.
    fn module(swapped: bool) -> Module {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import("page", "draw", EntityType::Function(0));
        let mut functions = FunctionSection::new();
        functions.function(0).function(0);
        let (first, last) = if swapped { (2, 1) } else { (1, 2) };
        let mut exports = ExportSection::new();
        exports.export("last", ExportKind::Func, last);
        let calls = |callee| {
            let mut function = Function::new([]);
            function.instructions().call(callee).end();
            function
        };
        let mut code = CodeSection::new();
        let (calls_draw, calls_first) = (calls(0), calls(first));
        if swapped {
            code.function(&calls_first).function(&calls_draw);
        } else {
            code.function(&calls_draw).function(&calls_first);
        }
        let mut module = Module::new();
        module.section(&types).section(&imports).section(&functions);
        module.section(&exports).section(&code);
        module
    }

    #[test]
    fn functions_stand_by_name_and_are_called_as_before() {
        let mut names = NameMap::new();
        for (index, name) in [(0, "draw"), (1, "temper"), (2, "quench")] {
            names.append(index, name);
        }
        let mut section = NameSection::new();
        section.functions(&names);
        let mut named = module(false);
        named.section(&section);
        assert_eq!(by_name(&named.finish()).unwrap(), module(true).finish());
    }

    #[test]
    fn what_is_no_module_is_an_error() {
        assert!(by_name(b"quench").is_err());
    }
}
