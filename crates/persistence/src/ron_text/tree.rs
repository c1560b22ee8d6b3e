//! The tree of fields and values, each with its place.

use std::ops::Range;

use crate::Place;

use super::{
    SyntaxFault,
    lex::{Kind, Token, Tokens},
};

/// Brackets within brackets; a build file needs five.
const DEEPEST: usize = 32;

/// A value with its place.
#[derive(Clone, Debug)]
pub(crate) struct Node {
    /// Bytes of the text.
    pub span: Range<usize>,
    /// What stands there.
    pub value: Value,
}

/// What a value is.
#[derive(Clone, Debug)]
pub(crate) enum Value {
    /// A number, or what stands for one.
    Number,
    /// Text in quotes.
    Text,
    /// A word such as `inch`.
    Word,
    /// `(1.0, 2.0)`, `[..]` or `kg(300.0)`.
    Items(Vec<Node>),
    /// `(name: value, ...)`
    Fields(Vec<Field>),
}

/// A named value.
#[derive(Clone, Debug)]
pub(crate) struct Field {
    /// Place of the name.
    pub key: Range<usize>,
    /// The value.
    pub node: Node,
}

/// A whole text: its root value and its comments.
#[derive(Clone, Debug)]
pub(crate) struct Outline {
    /// The root value.
    pub root: Node,
    /// Places of all comments, in order.
    pub comments: Vec<Range<usize>>,
}

impl Outline {
    /// The tree of a text.
    pub(crate) fn of(text: &str) -> Result<Self, SyntaxFault> {
        let (mut tokens, mut comments) = (Vec::new(), Vec::new());
        let mut depth = 0_usize;
        for token in Tokens::of(text) {
            let token = token?;
            match token.kind {
                Kind::Attribute => continue,
                Kind::Comment => {
                    comments.push(token.span);
                    continue;
                }
                Kind::Open(_) => depth += 1,
                Kind::Close(_) => depth = depth.saturating_sub(1),
                _ => {}
            }
            tokens.push(token);
            // The reader below refuses this bracket or something before it, so what follows need not be kept.
            if depth > DEEPEST + 1 {
                break;
            }
        }
        let mut reader = Reader {
            text,
            tokens: &tokens,
            next: 0,
        };
        let root = reader.value(0)?;
        match reader.peek() {
            Some(_) => Err(reader.fault("nothing after the last `)`")),
            None => Ok(Self { root, comments }),
        }
    }

    /// The value at a path such as `front.tie_rod.inner`; a number stands for a value of a list, the first being 1.
    pub(crate) fn node(&self, text: &str, path: &str) -> Option<&Node> {
        path.split('.')
            .try_fold(&self.root, |node, name| match name.parse::<usize>() {
                Ok(number) => node.unwrapped(text).items().get(number.checked_sub(1)?),
                Err(_) => node.field(text, name),
            })
            .map(|n| n.unwrapped(text))
    }

    /// Path and value of every field, outer ones first.
    pub(crate) fn fields<'a>(&'a self, text: &'a str) -> Vec<(String, &'a Field)> {
        let mut all = Vec::new();
        collect(&self.root, text, "", &mut all);
        all
    }
}

fn collect<'a>(node: &'a Node, text: &str, path: &str, all: &mut Vec<(String, &'a Field)>) {
    match &node.unwrapped(text).value {
        Value::Fields(fields) => {
            for field in fields {
                let name = text.get(field.key.clone()).unwrap_or_default();
                let path = if path.is_empty() {
                    name.to_owned()
                } else {
                    format!("{path}.{name}")
                };
                all.push((path.clone(), field));
                collect(&field.node, text, &path, all);
            }
        }
        Value::Items(items) => {
            for (item, number) in items.iter().zip(1..) {
                collect(item, text, &format!("{path}.{number}"), all);
            }
        }
        Value::Number | Value::Text | Value::Word => {}
    }
}

impl Node {
    /// The value of a field of this value.
    pub(crate) fn field(&self, text: &str, name: &str) -> Option<&Node> {
        match &self.unwrapped(text).value {
            Value::Fields(fields) => fields
                .iter()
                .find(|f| text.get(f.key.clone()) == Some(name))
                .map(|f| &f.node),
            _ => None,
        }
    }

    /// Values of a tuple or list.
    pub(crate) fn items(&self) -> &[Node] {
        match &self.value {
            Value::Items(items) => items,
            _ => &[],
        }
    }

    /// This value, and those of tuples and lists within it; fields have paths of their own.
    pub(crate) fn leaves(&self) -> Vec<&Node> {
        let mut all = vec![self];
        for item in self.items() {
            all.extend(item.leaves());
        }
        all
    }

    /// The text that stands here.
    pub(crate) fn text<'a>(&self, text: &'a str) -> &'a str {
        text.get(self.span.clone()).unwrap_or_default()
    }

    /// What stands inside `Some(...)`.
    pub(crate) fn unwrapped(&self, text: &str) -> &Node {
        match self.items() {
            [inner] if self.text(text).starts_with("Some") => inner.unwrapped(text),
            _ => self,
        }
    }
}

struct Reader<'a> {
    text: &'a str,
    tokens: &'a [Token],
    next: usize,
}

impl Reader<'_> {
    fn peek(&self) -> Option<Kind> {
        self.tokens.get(self.next).map(|t| t.kind)
    }

    fn take(&mut self) -> Range<usize> {
        let end = self.text.len();
        let span = self
            .tokens
            .get(self.next)
            .map_or(end..end, |t| t.span.clone());
        self.next += 1;
        span
    }

    fn fault(&self, expected: &str) -> SyntaxFault {
        let (at, found) = match self.tokens.get(self.next) {
            Some(t) => (
                t.span.start,
                format!("`{}`", shown(self.text.get(t.span.clone()).unwrap_or(""))),
            ),
            None => (self.text.trim_end().len(), "the end of the file".to_owned()),
        };
        SyntaxFault {
            at,
            found,
            expected: expected.to_owned(),
        }
    }

    fn value(&mut self, depth: usize) -> Result<Node, SyntaxFault> {
        if depth > DEEPEST {
            return Err(SyntaxFault {
                found: format!("more than {DEEPEST} brackets within each other"),
                ..self.fault("a value")
            });
        }
        let start = self.tokens.get(self.next).map_or(0, |t| t.span.start);
        let simple = match self.peek() {
            Some(Kind::Number) => Value::Number,
            Some(Kind::Text) => Value::Text,
            Some(Kind::Word) => Value::Word,
            Some(Kind::Open(open)) => return self.bracket(start, open, depth),
            _ => return Err(self.fault("a value")),
        };
        let span = self.take();
        match (&simple, self.peek()) {
            (Value::Word, Some(Kind::Open('('))) => self.bracket(start, '(', depth),
            _ => Ok(Node {
                span,
                value: simple,
            }),
        }
    }

    /// From the opening bracket to its closing one; `start` is where a name before it stands.
    fn bracket(&mut self, start: usize, open: char, depth: usize) -> Result<Node, SyntaxFault> {
        let at = self.take().start;
        let close = if open == '(' { ')' } else { ']' };
        let named = open == '('
            && matches!(self.peek(), Some(Kind::Word))
            && matches!(
                self.tokens.get(self.next + 1).map(|t| t.kind),
                Some(Kind::Colon)
            );
        let (mut fields, mut items) = (Vec::new(), Vec::new());
        while self.peek() != Some(Kind::Close(close)) {
            if named {
                fields.push(self.named(depth, close, at)?);
            } else {
                items.push(self.value(depth + 1)?);
            }
            match self.peek() {
                Some(Kind::Comma) => {
                    self.take();
                }
                Some(Kind::Close(c)) if c == close => {}
                _ => return Err(self.fault(&format!("`,` or {}", self.closing(close, at)))),
            }
        }
        let empty = !named && items.is_empty() && open == '(';
        Ok(Node {
            span: start..self.take().end,
            value: if named || empty {
                Value::Fields(fields)
            } else {
                Value::Items(items)
            },
        })
    }

    /// How a message names the bracket that would close the one at an offset.
    fn closing(&self, close: char, opened_at: usize) -> String {
        let line = Place::of(self.text, opened_at).line;
        format!("the `{close}` that closes the bracket of line {line}")
    }

    fn named(&mut self, depth: usize, close: char, at: usize) -> Result<Field, SyntaxFault> {
        if self.peek() != Some(Kind::Word) {
            let closing = self.closing(close, at);
            return Err(self.fault(&format!("a field name or {closing}")));
        }
        let key = self.take();
        if self.peek() != Some(Kind::Colon) {
            let name = self.text.get(key.clone()).unwrap_or_default();
            return Err(self.fault(&format!("`:` after the field name {name}")));
        }
        self.take();
        Ok(Field {
            key,
            node: self.value(depth + 1)?,
        })
    }
}

/// Place of the number behind `format:` where it is the first field, even of a text that is no tree: a newer format may use signs that this one
/// does not know.
pub(crate) fn leading_format(text: &str) -> Option<Range<usize>> {
    let mut tokens = meaning(text);
    let mut next = |kind: Kind| {
        let found = tokens.next().filter(|t| t.kind == kind);
        found.map(|t| t.span)
    };
    next(Kind::Open('('))?;
    let name = next(Kind::Word)?;
    text.get(name).filter(|name| *name == "format")?;
    next(Kind::Colon)?;
    next(Kind::Number)
}

/// Whether the first thing in a text is the bracket that a build stands in.
pub(crate) fn starts_with_bracket(text: &str) -> bool {
    meaning(text)
        .next()
        .is_some_and(|t| t.kind == Kind::Open('('))
}

fn meaning(text: &str) -> impl Iterator<Item = Token> {
    Tokens::of(text)
        .map_while(Result::ok)
        .filter(|t| !matches!(t.kind, Kind::Comment | Kind::Attribute))
}

/// A piece of text short enough for a message, on one line.
pub(crate) fn shown(text: &str) -> String {
    let most = 40;
    let mut line: String = text
        .chars()
        .take(most)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.chars().count() > most {
        line.push_str("...");
    }
    line
}
