//! Declares the core's own records and enums again, as UniFFI asks of types from another crate.
//!
//! Written by hand, the declarations would be fifteen hundred lines that say what the core says
//! already. So they are read from the core's sources: a field added there crosses without a line
//! here, with its documentation, which becomes that of the Kotlin and Swift types.

use std::env;
use std::error::Error;
use std::fs;
use std::path::Path;

use proc_macro2::TokenStream;
use quote::{format_ident, quote};
use sha2::{Digest, Sha256};
use syn::parse::{Parse, ParseStream};
use syn::punctuated::Punctuated;
use syn::{Attribute, Field, Ident, Item, LitStr, Token, braced};

/// What crosses: a source file of the core, the module that exports its types, and the types; all
/// public ones of the file when none is named.
const SURFACE: [(&str, &str, &[&str]); 22] = [
    ("instant.rs", "", &["Instant"]),
    ("mass.rs", "", &["Mass", "MassUnit"]),
    ("care/mod.rs", "care", &["Place", "Sign"]),
    ("care/advice.rs", "care", &["Advice"]),
    ("clock/mod.rs", "clock", &["Act", "During", "Trust"]),
    ("clock/cue.rs", "clock", &["Cue", "CueKind", "PassedCue"]),
    ("clock/hold.rs", "clock", &["HoldPhase", "HoldState", "WhyShort"]),
    ("clock/interval.rs", "clock", &["IntervalPhase", "IntervalState"]),
    ("journal/body.rs", "journal", &["Decision", "Role"]),
    ("load/reason.rs", "load", &["Reason"]),
    ("plan/measure.rs", "plan", &["MeasuredWhen", "Protocol"]),
    ("plan/movement.rs", "plan", &["Because"]),
    ("plan/piece.rs", "plan", &["Technique"]),
    ("plan/problem.rs", "plan", &["Problem"]),
    ("companion/screen.rs", "companion", &[]),
    ("companion/tap.rs", "companion", &[]),
    ("companion/pace.rs", "companion", &[]),
    ("companion/rest.rs", "companion", &[]),
    ("companion/coach.rs", "companion", &[]),
    ("companion/carry.rs", "companion", &[]),
    ("companion/error.rs", "companion", &[]),
    ("companion/start.rs", "companion", &[]),
];

/// The same for files whose every public type is of the review, and the exchange's own.
const MORE: [(&str, &str, &[&str]); 9] = [
    ("exchange/mod.rs", "companion", &["AsideFile", "CarriedFile", "ExchangePlan", "ListedFile"]),
    ("review/attention.rs", "review", &[]),
    ("review/board.rs", "review", &[]),
    ("review/export.rs", "review", &["Export", "Table", "TableRow"]),
    ("review/member.rs", "review", &[]),
    ("review/proposal.rs", "review", &[]),
    ("review/series.rs", "review", &[]),
    ("review/strength.rs", "review", &[]),
    ("review/week.rs", "review", &[]),
];

fn main() -> Result<(), Box<dyn Error>> {
    fold_alike_code();
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../core/src");
    let mut surface = TokenStream::new();
    for (file, module, names) in SURFACE.iter().chain(&MORE) {
        let path = core.join(file);
        println!("cargo::rerun-if-changed={}", path.display());
        let parsed = syn::parse_file(&fs::read_to_string(&path)?)?;
        let mut found = Vec::new();
        for item in &parsed.items {
            let Some(mut declared) = declared(item)? else { continue };
            if env::var_os("CARGO_FEATURE_OTHER_SURFACE").is_some() {
                declared.turn_round();
            }
            if names.is_empty() || names.contains(&declared.name.to_string().as_str()) {
                found.push(declared.name.to_string());
                surface.extend(declared.remote(module));
            }
        }
        let missing: Vec<_> =
            names.iter().filter(|name| !found.iter().any(|it| it == *name)).collect();
        if !missing.is_empty() || found.is_empty() {
            return Err(format!("{file} has no public {missing:?}").into());
        }
    }
    let digested = digested(&surface.to_string());
    surface.extend(digested);
    let out = Path::new(&env::var("OUT_DIR")?).join("surface.rs");
    fs::write(out, surface.to_string())?;
    Ok(())
}

/// Asks the linker to keep one of several functions with the same code: generic code of every crate
/// repeats itself. Only where the linker is LLVM's, which others need not be.
fn fold_alike_code() {
    let target = |part| env::var(format!("CARGO_CFG_TARGET_{part}")).unwrap_or_default();
    let (system, chip) = (target("OS"), target("ARCH"));
    if system == "android" || (system == "linux" && chip == "x86_64") {
        println!("cargo::rustc-cdylib-link-arg=-Wl,--icf=all");
    }
}

/// A function that nobody calls, with the surface's digest for the name of its argument.
///
/// Generated code holds a library's checksums against its own before the first call. They cover the
/// names and arguments of functions, but no field of a record: with this, they cover those too. A
/// changed comment counts as well, which does no harm: code and library come from one build.
fn digested(surface: &str) -> TokenStream {
    let digest: String =
        Sha256::digest(surface).iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    let argument = format_ident!("of_{digest}");
    quote! {
        /// Does nothing: its argument's name tells two surfaces apart.
        #[uniffi::export]
        pub(crate) fn surface(#argument: bool) {
            let _ = #argument;
        }
    }
}

/// A type as it is declared again.
struct Declared {
    name: Ident,
    kind: &'static str,
    docs: Vec<Attribute>,
    parts: Vec<TokenStream>,
}

impl Declared {
    /// The fields of a record in another order, as a library of another version might have them.
    fn turn_round(&mut self) {
        if self.kind == "Record" {
            self.parts.reverse();
        }
    }

    fn remote(&self, module: &str) -> TokenStream {
        let Declared { name, kind, docs, parts } = self;
        let kind = format_ident!("{kind}");
        let path = match module {
            "" => quote!(holdfast_core),
            module => {
                let module = format_ident!("{module}");
                quote!(holdfast_core::#module)
            }
        };
        let keyword = if kind == "Record" { quote!(struct) } else { quote!(enum) };
        quote! {
            type #name = #path::#name;
            #(#docs)*
            #[uniffi::remote(#kind)]
            pub #keyword #name { #(#parts),* }
        }
    }
}

/// Reads a public struct, a public enum, or a closed set of words; nothing else crosses.
fn declared(item: &Item) -> Result<Option<Declared>, syn::Error> {
    Ok(match item {
        Item::Struct(item) if is_public(&item.vis) => {
            let parts = item.fields.iter().map(field).collect();
            let (name, docs) = (item.ident.clone(), docs(&item.attrs));
            Some(Declared { name, kind: "Record", docs, parts })
        }
        Item::Enum(item) if is_public(&item.vis) => {
            let variants = item.variants.iter().map(|variant| {
                let (name, docs) = (&variant.ident, docs(&variant.attrs));
                let fields = variant.fields.iter().map(field);
                if variant.fields.is_empty() {
                    quote!(#(#docs)* #name)
                } else {
                    quote!(#(#docs)* #name { #(#fields),* })
                }
            });
            let parts = variants.collect();
            let kind = if item.ident == "CompanionError" { "Error" } else { "Enum" };
            Some(Declared { name: item.ident.clone(), kind, docs: docs(&item.attrs), parts })
        }
        Item::Macro(item) if item.mac.path.is_ident("keyword") => {
            let words: Words = item.mac.parse_body()?;
            let variants = words.words.iter().map(|word| {
                let (name, docs) = (&word.name, &word.docs);
                quote!(#(#docs)* #name)
            });
            let parts = variants.collect();
            Some(Declared { name: words.name, kind: "Enum", docs: words.docs, parts })
        }
        _ => None,
    })
}

fn is_public(visibility: &syn::Visibility) -> bool {
    matches!(visibility, syn::Visibility::Public(_))
}

fn docs(attributes: &[Attribute]) -> Vec<Attribute> {
    attributes.iter().filter(|it| it.path().is_ident("doc")).cloned().collect()
}

fn field(field: &Field) -> TokenStream {
    let (docs, ty) = (docs(&field.attrs), &field.ty);
    match &field.ident {
        Some(name) => quote!(#(#docs)* #name: #ty),
        None => quote!(#ty),
    }
}

/// The body of the core's `keyword!`: `/// doc` `Name { Variant = "text", ... }`.
struct Words {
    docs: Vec<Attribute>,
    name: Ident,
    words: Vec<Word>,
}

struct Word {
    docs: Vec<Attribute>,
    name: Ident,
}

impl Parse for Words {
    fn parse(input: ParseStream<'_>) -> syn::Result<Words> {
        let docs = docs(&Attribute::parse_outer(input)?);
        let name = input.parse()?;
        let content;
        braced!(content in input);
        let words: Punctuated<Word, Token![,]> = Punctuated::parse_terminated(&content)?;
        Ok(Words { docs, name, words: words.into_iter().collect() })
    }
}

impl Parse for Word {
    fn parse(input: ParseStream<'_>) -> syn::Result<Word> {
        let mut docs = docs(&Attribute::parse_outer(input)?);
        let name = input.parse()?;
        input.parse::<Token![=]>()?;
        let text: LitStr = input.parse()?;
        if docs.is_empty() {
            let text = format!(" `{}`.", text.value());
            docs.push(syn::parse_quote!(#[doc = #text]));
        }
        Ok(Word { docs, name })
    }
}
