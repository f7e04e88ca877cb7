//! A formula with its values in the place of its symbols, as it is keyed into a calculator.

use super::quantity::plain;
use crate::ledger::Put;

const FUNCTIONS: [&str; 9] = ["abs", "min", "max", "sqrt", "sin", "cos", "round", "nearest", "sum"];

/// A piece of a formula.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Token<'a> {
    /// A symbol or a function.
    Name(&'a str),
    /// Digits.
    Number(&'a str),
    /// Anything else but a space.
    Sign(char),
}

fn tokens(formula: &str) -> Vec<Token<'_>> {
    let mut tokens = Vec::new();
    let mut rest = formula;
    while let Some(first) = rest.chars().next() {
        let is_more: fn(char) -> bool = if first.is_ascii_digit() {
            |c| c.is_ascii_digit() || c == '.'
        } else if first.is_alphabetic() {
            |c| c.is_alphanumeric() || c == '_' || c == '\''
        } else {
            |_| false
        };
        let end = rest.find(|c| !is_more(c)).unwrap_or(rest.len()).max(first.len_utf8());
        let (word, after) = rest.split_at(end);
        rest = after;
        match first {
            ' ' => {}
            _ if first.is_ascii_digit() => tokens.push(Token::Number(word)),
            _ if first.is_alphabetic() => tokens.push(Token::Name(word)),
            sign => tokens.push(Token::Sign(sign)),
        }
    }
    tokens
}

/// Every symbol that a formula asks for.
pub(super) fn symbols(formula: &str) -> Vec<&str> {
    let tokens = tokens(formula);
    let named = tokens.iter().map(|token| match token {
        Token::Name(name) if !FUNCTIONS.contains(name) && *name != "pi" => Some(*name),
        _ => None,
    });
    named.flatten().collect()
}

/// The right side of a clause with its values; sums written out.
pub(super) fn put_in(told: &str, put: &[Put]) -> String {
    let mut written = Written { text: String::new(), put };
    written.run(&tokens(told), None);
    written.text
}

struct Written<'a> {
    text: String,
    put: &'a [Put],
}

impl Written<'_> {
    /// Writes tokens; within a sum the values of one turn.
    fn run(&mut self, tokens: &[Token<'_>], turn: Option<usize>) {
        let mut at = 0;
        while let Some(token) = tokens.get(at).copied() {
            let before = at.checked_sub(1).and_then(|before| tokens.get(before)).copied();
            let after = tokens.get(at + 1).copied();
            if token == Token::Name("sum") && after == Some(Token::Sign('(')) {
                self.join(before, token);
                let inner = inside(tokens, at + 2);
                self.sum(inner);
                at += inner.len() + 3;
                continue;
            }
            self.join(before, token);
            match token {
                Token::Name(name) => self.name(name, after == Some(Token::Sign('^')), turn),
                Token::Number(number) => self.text.push_str(number),
                Token::Sign(sign) => self.text.push(sign),
            }
            at += 1;
        }
    }

    /// What stands between two tokens: a times between two factors, spaces round other signs.
    fn join(&mut self, before: Option<Token<'_>>, token: Token<'_>) {
        let Some(before) = before else { return };
        let ends_one = matches!(before, Token::Number(_) | Token::Sign(')'))
            || matches!(before, Token::Name(name) if !FUNCTIONS.contains(&name));
        let begins_one = matches!(token, Token::Number(_) | Token::Name(_) | Token::Sign('('));
        let is_leading_minus = before == Token::Sign('-') && matches!(self.text.as_str(), "-");
        self.text.push_str(match (before, token) {
            _ if ends_one && begins_one => " \u{d7} ",
            (Token::Sign('^'), _) | (_, Token::Sign('^' | ',' | ')')) => "",
            (_, Token::Sign(sign)) if sign != '(' => " ",
            (Token::Sign('('), _) | (Token::Name(_), Token::Sign('(')) => "",
            _ if is_leading_minus => "",
            (Token::Sign(_), _) => " ",
            _ => "",
        });
    }

    fn name(&mut self, name: &str, is_raised: bool, turn: Option<usize>) {
        let is_first = self.text.is_empty() || self.text.ends_with('(');
        let mut found = self.put.iter().filter(|put| put.symbol == name);
        let many = found.clone().count() > 1;
        let put = if many { found.nth(turn.unwrap_or_default()) } else { found.next() };
        match put {
            Some(put) => {
                let value = plain(put.amount);
                let has_unit = !value.ends_with(|c: char| c.is_ascii_digit());
                if is_raised && has_unit
                    || !is_first && value.starts_with('-')
                    || is_raised && value.starts_with('-')
                {
                    self.text.push_str(&format!("({value})"));
                } else {
                    self.text.push_str(&value);
                }
            }
            None => self.text.push_str(name),
        }
    }

    /// Every turn of a sum, in parentheses.
    fn sum(&mut self, inner: &[Token<'_>]) {
        let count = |token: &Token<'_>| match token {
            Token::Name(name) => self.put.iter().filter(|put| put.symbol == *name).count(),
            _ => 0,
        };
        let turns = inner.iter().map(count).max().unwrap_or_default();
        self.text.push('(');
        for turn in 0..turns {
            if turn > 0 {
                self.text.push_str(" + ");
            }
            let mut one = Written { text: String::new(), put: self.put };
            one.run(inner, Some(turn));
            self.text.push_str(&one.text);
        }
        self.text.push(')');
    }
}

/// What stands in the parentheses that are open before a place.
fn inside<'t, 'a>(tokens: &'t [Token<'a>], from: usize) -> &'t [Token<'a>] {
    let mut depth = 1;
    let rest = tokens.get(from..).unwrap_or_default();
    let end = rest.iter().position(|token| {
        match token {
            Token::Sign('(') => depth += 1,
            Token::Sign(')') => depth -= 1,
            _ => {}
        }
        depth == 0
    });
    rest.get(..end.unwrap_or(rest.len())).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::{Amount, Label, Shown};

    #[test]
    fn values_stand_where_their_symbols_stood() {
        let inch = |symbol, value| Put::new(symbol, Amount::new(value, Shown::Inch), Label::Measured);
        let bare = |symbol, value: f64| Put::new(symbol, value, Label::Measured);
        let put = [
            bare("G", 0.36),
            inch("D", 0.3125),
            bare("k", 1.0),
            bare("k", 0.0),
            inch("r", -8.0),
            inch("r", 8.0),
            inch("W'p", 2.0),
        ];
        let told = [
            ("1800 G^(3/2) D^(3/4)", "1800 \u{d7} 0.36^(3 / 2) \u{d7} (0.3125 in)^(3 / 4)"),
            ("50 round(16600 G^1.84 / 50)", "50 \u{d7} round(16600 \u{d7} 0.36^1.84 / 50)"),
            ("D/2 - W'p", "0.3125 in / 2 - 2 in"),
            ("-sum(k r) / (2 G)", "-(1 \u{d7} (-8 in) + 0 \u{d7} 8 in) / (2 \u{d7} 0.36)"),
            ("max(D, 0) + G", "max(0.3125 in, 0) + 0.36"),
            ("sum(k r^2)", "(1 \u{d7} (-8 in)^2 + 0 \u{d7} (8 in)^2)"),
            ("-G D", "-0.36 \u{d7} 0.3125 in"),
            ("share pi", "share \u{d7} pi"),
        ];
        for (formula, words) in told {
            assert_eq!(put_in(formula, &put).replace('\u{a0}', " "), words, "{formula}");
        }
        assert_eq!(symbols("2 C / (B + sqrt(B^2 + 4 A C)) pi"), ["C", "B", "B", "A", "C"]);
    }
}
