//! Runs a compiled WebAssembly test in a browser: the runner that cargo calls.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
