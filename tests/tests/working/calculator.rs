//! A hand calculator: works a formula of a working out by what is put in, knowing nothing of how the solver does.

use std::collections::BTreeMap;
use strikeline_solver::ledger::{Amount, Shown, Step};

/// A number without its unit: millimetres and newtons together, inches and pounds-force together.
pub(crate) fn bare(amount: Amount) -> f64 {
    if amount.unit == Shown::NewtonMetre { amount.value * 1000.0 } else { amount.value }
}

/// What two sums of the same may differ by.
fn slack(unit: Shown) -> f64 {
    match unit {
        Shown::NewtonMetre | Shown::SquareMillimetre => 1e-3,
        Shown::Newton | Shown::Millimetre => 1e-6,
        _ => 1e-12,
    }
}

fn is_same(a: f64, b: f64, slack: f64) -> bool {
    (a - b).abs() <= slack + 1e-9 * a.abs().max(b.abs())
}

/// Every symbol of a formula, its functions left out.
pub(crate) fn symbols(formula: &str) -> Vec<String> {
    let tokens = tokens(formula);
    let is_function = |at: usize| tokens.get(at + 1) == Some(&Token::Sign('('));
    let named = tokens.iter().enumerate().filter_map(|(at, token)| match token {
        Token::Name(name) if name != "pi" && !(FUNCTIONS.contains(&name.as_str()) && is_function(at)) => {
            Some(name.clone())
        }
        _ => None,
    });
    named.collect()
}

/// Works a step out again, clause by clause; what does not come out as it is told.
pub(crate) fn wrong(step: &Step) -> Option<String> {
    let mut put: BTreeMap<&str, Vec<f64>> = BTreeMap::new();
    for one in &step.put {
        put.entry(one.symbol).or_default().push(bare(one.amount));
    }
    for (index, clause) in step.formula.split("; ").enumerate() {
        let Some((symbol, told)) = clause.split_once(" = ") else {
            return Some(format!("no result: {clause}"));
        };
        let mut sum = Sum { tokens: tokens(told), at: 0, put: &put, index: None };
        let found = match sum.added() {
            Ok(found) if sum.at == sum.tokens.len() => found,
            Ok(_) => return Some(format!("{clause}: cannot be read at {}", sum.at)),
            Err(why) => return Some(format!("{clause}: {why}")),
        };
        let (meant, slack) = if index == 0 {
            // The nearest bit of any set is half a 64th off at most.
            let near = if told.starts_with("nearest") { 1.0 / 128.0 + 1e-9 } else { 0.0 };
            (bare(step.result), slack(step.result.unit) + near)
        } else {
            match put.get(symbol).map(Vec::as_slice) {
                Some([one]) => (*one, 1e-9),
                _ => return Some(format!("{clause}: {symbol} is not put in")),
            }
        };
        if !is_same(found, meant, slack) {
            return Some(format!("{}: {clause} gives {found}, not {meant}", step.name));
        }
    }
    None
}

const FUNCTIONS: [&str; 11] =
    ["abs", "min", "max", "sqrt", "sin", "cos", "tan", "atan", "round", "nearest", "sum"];

#[derive(Clone, Debug, PartialEq)]
enum Token {
    Number(f64),
    Name(String),
    Sign(char),
}

fn tokens(text: &str) -> Vec<Token> {
    let mut tokens = Vec::new();
    let mut letters = text.chars().peekable();
    while let Some(first) = letters.next() {
        let mut word = String::from(first);
        let mut take = |is_more: fn(char) -> bool| {
            while let Some(more) = letters.next_if(|c| is_more(*c)) {
                word.push(more);
            }
            word.clone()
        };
        if first.is_ascii_digit() {
            tokens.push(Token::Number(take(|c| c.is_ascii_digit() || c == '.').parse().unwrap()));
        } else if first.is_alphabetic() {
            tokens.push(Token::Name(take(|c| c.is_alphanumeric() || c == '_' || c == '\'')));
        } else if first != ' ' {
            tokens.push(Token::Sign(first));
        }
    }
    tokens
}

/// A sum while it is worked out.
struct Sum<'a> {
    tokens: Vec<Token>,
    at: usize,
    put: &'a BTreeMap<&'a str, Vec<f64>>,
    /// Which of the values under a symbol is meant, within `sum`.
    index: Option<usize>,
}

type Found = Result<f64, String>;

impl Sum<'_> {
    fn is(&self, sign: char) -> bool {
        self.tokens.get(self.at) == Some(&Token::Sign(sign))
    }

    fn takes(&mut self, sign: char) -> bool {
        let is = self.is(sign);
        self.at += usize::from(is);
        is
    }

    fn added(&mut self) -> Found {
        let mut sum = if self.takes('-') { -self.multiplied()? } else { self.multiplied()? };
        loop {
            if self.takes('+') {
                sum += self.multiplied()?;
            } else if self.takes('-') {
                sum -= self.multiplied()?;
            } else {
                return Ok(sum);
            }
        }
    }

    fn multiplied(&mut self) -> Found {
        let mut product = self.raised()?;
        loop {
            if self.takes('/') {
                product /= self.raised()?;
            } else if matches!(self.tokens.get(self.at), Some(Token::Number(_) | Token::Name(_)))
                || self.is('(')
            {
                product *= self.raised()?;
            } else {
                return Ok(product);
            }
        }
    }

    fn raised(&mut self) -> Found {
        let base = self.single()?;
        Ok(if self.takes('^') { base.powf(self.single()?) } else { base })
    }

    fn single(&mut self) -> Found {
        let token = self.tokens.get(self.at).cloned().ok_or("ends too soon")?;
        self.at += 1;
        match token {
            Token::Number(number) => Ok(number),
            Token::Sign('(') => {
                let inner = self.added()?;
                if self.takes(')') { Ok(inner) } else { Err("no )".into()) }
            }
            Token::Name(name) if self.is('(') && FUNCTIONS.contains(&name.as_str()) => self.called(&name),
            Token::Name(name) if name == "pi" => Ok(std::f64::consts::PI),
            Token::Name(name) => {
                let values = self.put.get(name.as_str()).ok_or(format!("{name} is not put in"))?;
                match (values.as_slice(), self.index) {
                    ([one], _) => Ok(*one),
                    (many, Some(index)) => many.get(index).copied().ok_or(format!("{name} runs out")),
                    _ => Err(format!("{name} is put in more than once")),
                }
            }
            Token::Sign(sign) => Err(format!("a {sign}")),
        }
    }

    fn called(&mut self, name: &str) -> Found {
        self.at += 1;
        if name == "sum" {
            return self.summed();
        }
        let mut given = vec![self.added()?];
        while self.takes(',') {
            given.push(self.added()?);
        }
        if !self.takes(')') {
            return Err(format!("no ) after {name}"));
        }
        Ok(match (name, given.as_slice()) {
            ("min", many) => many.iter().copied().fold(f64::INFINITY, f64::min),
            ("max", many) => many.iter().copied().fold(f64::NEG_INFINITY, f64::max),
            ("abs", [one]) => one.abs(),
            ("sqrt", [one]) => one.sqrt(),
            ("sin", [one]) => one.to_radians().sin(),
            ("cos", [one]) => one.to_radians().cos(),
            ("tan", [one]) => one.to_radians().tan(),
            ("atan", [one]) => one.atan().to_degrees(),
            ("round", [one]) => one.round(),
            ("nearest", [one]) => *one,
            _ => return Err(format!("{name} of {given:?}")),
        })
    }

    /// Over every value under one symbol.
    fn summed(&mut self) -> Found {
        let start = self.at;
        let mut depth = 1;
        let inside = self.tokens.iter().skip(start).take_while(|token| {
            depth += i32::from(**token == Token::Sign('(')) - i32::from(**token == Token::Sign(')'));
            depth > 0
        });
        let values = inside.filter_map(|token| match token {
            Token::Name(name) => self.put.get(name.as_str()).map(Vec::len),
            _ => None,
        });
        let count = values.max().ok_or("a sum of nothing")?;
        let mut sum = 0.0;
        for index in 0..count {
            (self.at, self.index) = (start, Some(index));
            sum += self.added()?;
        }
        self.index = None;
        if self.takes(')') { Ok(sum) } else { Err("no ) after sum".into()) }
    }
}

#[test]
fn it_reckons_as_anyone_does() {
    use strikeline_solver::ledger::{Label, Put};
    let mut step = Step {
        name: "sample",
        formula: "",
        put: [("a", 2.0), ("a", 3.0), ("b", 4.0), ("W'p", 0.5)]
            .map(|(symbol, value)| Put::new(symbol, value, Label::Measured))
            .to_vec(),
        result: Amount::bare(0.0),
        source: "arithmetic",
        label: Label::Derived,
    };
    let sums = [
        ("c = sum(a^2 b) + 1", 53.0),
        ("c = -sum(a) / (2 b)", -0.625),
        ("c = max(sqrt(b), min(b, 1)) W'p", 1.0),
        ("c = 2 round(b / 3) - 8/4 b", -6.0),
        ("c = cos(60 b / 4) b^(1/2)", 1.0),
    ];
    for (formula, value) in sums {
        (step.formula, step.result.value) = (formula, value);
        assert_eq!(wrong(&step), None);
        step.result.value += 1e-6;
        assert!(wrong(&step).is_some(), "{formula}");
    }
    (step.formula, step.result.value) = ("c = b d; d = 1", 4.0);
    assert!(wrong(&step).unwrap().contains("d is not put in"));
}
