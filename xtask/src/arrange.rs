//! The functions of a WebAssembly module in an order in which they compress well.

use std::collections::{HashMap, VecDeque};

use anyhow::{Result, anyhow};
use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{
    CodeSectionReader, CustomSectionReader, FunctionBody, FunctionSectionReader, Parser, Payload,
    TypeRef,
};

/// Puts functions with like code near each other, where gzip with its window of 32 kB finds what
/// they have in common. wasm-bindgen leaves them by size.
pub(crate) fn by_likeness(wasm: &[u8]) -> Result<Vec<u8>> {
    let mut order = Order::of(wasm)?;
    let mut module = Module::new();
    utils::parse_core_module(&mut order, &mut module, Parser::new(0), wasm)
        .map_err(|error| anyhow!("cannot arrange the module: {error}"))?;
    Ok(module.finish())
}

/// Bytes that are looked at together: a piece.
const PIECE: usize = 6;
/// A piece that so many functions have tells nothing.
const COMMON: usize = 2000;
/// Bytes of code that gzip looks back on where a function begins: its window, less what the function
/// itself takes of it.
const LOOKS_BACK: usize = 28_000;
/// Pieces that a function counts for more than it has: of little code, much may be shared by chance.
const MORE: f64 = 64.0;

/// The pieces of some codes, and how many of them each code would find again.
struct Pieces {
    /// Numbers of the pieces of each code.
    of: Vec<Vec<usize>>,
    /// The codes that have each piece.
    having: Vec<Vec<usize>>,
    /// What each piece counts: the fewer have it, the more.
    weight: Vec<f64>,
    /// What the pieces of each code count that are to be found.
    found: Vec<f64>,
}

impl Pieces {
    fn of(codes: &[&[u8]]) -> Self {
        let mut numbers: HashMap<&[u8], usize> = HashMap::new();
        let mut having: Vec<Vec<usize>> = Vec::new();
        let mut of = Vec::with_capacity(codes.len());
        for (code, bytes) in codes.iter().enumerate() {
            let mut own = Vec::new();
            for piece in bytes.windows(PIECE) {
                let number = *numbers.entry(piece).or_insert(having.len());
                if number == having.len() {
                    having.push(Vec::new());
                }
                if having[number].last() != Some(&code) {
                    having[number].push(code);
                    own.push(number);
                }
            }
            of.push(own);
        }
        let weight = |codes_with: &Vec<usize>| match codes_with.len() {
            2..COMMON => (codes.len() as f64 / codes_with.len() as f64).cbrt(),
            _ => 0.0,
        };
        Self {
            weight: having.iter().map(weight).collect(),
            found: vec![0.0; codes.len()],
            of,
            having,
        }
    }

    /// Counts a piece for all codes that have it, or no longer.
    fn count(&mut self, piece: usize, sign: f64) {
        let weight = sign * self.weight[piece];
        if weight != 0.0 {
            for code in &self.having[piece] {
                self.found[*code] += weight;
            }
        }
    }

    /// How much of a code is to be found.
    fn likeness(&self, code: usize) -> f64 {
        self.found[code] / (self.of[code].len() as f64 + MORE)
    }
}

/// The codes placed last, as far as they are looked back on; at least one.
struct Window {
    most_bytes: usize,
    bytes: usize,
    codes: VecDeque<usize>,
    /// How many of them have each piece.
    times: Vec<u32>,
}

impl Window {
    fn new(most_bytes: usize, pieces: &Pieces) -> Self {
        Self {
            most_bytes,
            bytes: 0,
            codes: VecDeque::new(),
            times: vec![0; pieces.having.len()],
        }
    }

    /// Takes in the next code, and leaves those behind that are too far away then.
    fn move_on(&mut self, code: usize, codes: &[&[u8]], pieces: &mut Pieces) {
        self.codes.push_back(code);
        self.bytes += codes[code].len();
        for i in 0..pieces.of[code].len() {
            let piece = pieces.of[code][i];
            self.times[piece] += 1;
            if self.times[piece] == 1 {
                pieces.count(piece, 1.0);
            }
        }
        while self.bytes > self.most_bytes && self.codes.len() > 1 {
            let Some(left) = self.codes.pop_front() else {
                break;
            };
            self.bytes -= codes[left].len();
            for i in 0..pieces.of[left].len() {
                let piece = pieces.of[left][i];
                self.times[piece] -= 1;
                if self.times[piece] == 0 {
                    pieces.count(piece, -1.0);
                }
            }
        }
    }
}

/// An order of pieces of code: each is followed by the one, of those left, that finds most of itself in
/// what came before it, and once more in the last; by the first of those left where none does.
fn chained(codes: &[&[u8]]) -> Vec<u32> {
    let mut pieces = Pieces::of(codes);
    let mut windows = [LOOKS_BACK, 0].map(|bytes| Window::new(bytes, &pieces));
    let mut is_placed = vec![false; codes.len()];
    let mut order = Vec::with_capacity(codes.len());
    let mut rest = 0..codes.len();
    let mut next = rest.next();
    while let Some(here) = next {
        is_placed[here] = true;
        order.push(here as u32);
        for window in &mut windows {
            window.move_on(here, codes, &mut pieces);
        }
        // Sums and differences leave a little where nothing is found.
        next = (0..codes.len())
            .filter(|i| !is_placed[*i] && pieces.found[*i] > 1e-6)
            .max_by(|a, b| pieces.likeness(*a).total_cmp(&pieces.likeness(*b)))
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
