//! A printed formula's value: products without a sign, + − /, brackets, ½, and a square.

/// The value of a formula's right-hand side.
pub fn value(formula: &str, inputs: &[(&str, f64)]) -> f64 {
    let right = formula.split('=').nth(1).expect("a formula has a result");
    let mut reader = Reader {
        text: right.chars().collect(),
        at: 0,
        inputs,
    };
    let value = reader.sum();
    reader.skip();
    assert_eq!(reader.at, reader.text.len(), "read to its end: {right}");
    value
}

struct Reader<'a> {
    text: Vec<char>,
    at: usize,
    inputs: &'a [(&'a str, f64)],
}

impl Reader<'_> {
    fn skip(&mut self) {
        while self.peek() == Some(' ') {
            self.at += 1;
        }
    }

    fn peek(&self) -> Option<char> {
        self.text.get(self.at).copied()
    }

    fn next(&mut self) -> Option<char> {
        self.skip();
        self.peek()
    }

    fn sum(&mut self) -> f64 {
        let mut total = self.product();
        while let Some(sign @ ('+' | '−')) = self.next() {
            self.at += 1;
            let term = self.product();
            total += if sign == '+' { term } else { -term };
        }
        total
    }

    fn product(&mut self) -> f64 {
        let mut total = self.factor();
        loop {
            match self.next() {
                Some('/') => {
                    self.at += 1;
                    total /= self.factor();
                }
                None | Some('+' | '−' | ')') => return total,
                _ => total *= self.factor(),
            }
        }
    }

    fn factor(&mut self) -> f64 {
        let base = match self.next() {
            Some('(') => {
                self.at += 1;
                let inner = self.sum();
                assert_eq!(self.next(), Some(')'));
                self.at += 1;
                inner
            }
            Some('½') => {
                self.at += 1;
                0.5
            }
            Some(digit) if digit.is_ascii_digit() => self.number(),
            _ => self.symbol(),
        };
        if self.peek() == Some('²') {
            self.at += 1;
            return base * base;
        }
        base
    }

    fn number(&mut self) -> f64 {
        let from = self.at;
        while self.peek().is_some_and(|c| c.is_ascii_digit() || c == '.') {
            self.at += 1;
        }
        let digits: String = self.text[from..self.at].iter().collect();
        digits.parse().expect("a number")
    }

    fn symbol(&mut self) -> f64 {
        let rest: String = self.text[self.at..].iter().collect();
        let longest = self
            .inputs
            .iter()
            .filter(|(symbol, _)| rest.starts_with(symbol))
            .max_by_key(|(symbol, _)| symbol.len());
        let (symbol, value) = longest.unwrap_or_else(|| panic!("what is {rest:?}?"));
        self.at += symbol.chars().count();
        *value
    }
}
