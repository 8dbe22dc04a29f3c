//! Tokens into a tree, by the grammar of the language page.

use super::ast::{AfterExpr, Argument, Comparison, Expr, ExprKind, Literal, MarkerExpr, SideExpr, Span};
use super::token::{JOINERS, Lexeme, Token, Unreadable, tokens};

/// How deep an expression may be nested: more is nobody's wish, and the reader's stack is finite.
pub const DEEPEST: usize = 32;

/// Reads a condition.
///
/// # Errors
/// The first thing that does not fit the grammar, with its place.
pub fn condition(text: &str) -> Result<Expr, Unreadable> {
    let mut parser = Parser::new(text)?;
    let expr = parser.or()?;
    parser.end()?;
    Ok(expr)
}

/// Reads a sum: the input of an amount.
///
/// # Errors
/// As [`condition`].
pub fn sum(text: &str) -> Result<Expr, Unreadable> {
    let mut parser = Parser::new(text)?;
    let expr = parser.sum()?;
    parser.end()?;
    Ok(expr)
}

/// Reads one side of a window.
///
/// # Errors
/// As [`condition`].
pub fn side(text: &str) -> Result<SideExpr, Unreadable> {
    let mut parser = Parser::new(text)?;
    let mut choices = vec![parser.marker()?];
    while parser.eat_word("else") {
        choices.push(parser.marker()?);
    }
    parser.end()?;
    Ok(SideExpr { choices })
}

/// Reads the `after` of an expectation, a separation in days, or any `number[..number] unit`.
///
/// # Errors
/// As [`condition`].
pub fn after(text: &str) -> Result<AfterExpr, Unreadable> {
    let mut parser = Parser::new(text)?;
    let (first, span) = parser.number()?;
    let mut whole = AfterExpr { from: first.value, to: first.value, unit: first.unit, span };
    if parser.eat("..") {
        let (last, end) = parser.number()?;
        if !whole.unit.is_empty() && whole.unit != last.unit {
            return Err(Unreadable::new(span, "the unit stands once, behind the last number"));
        }
        whole = AfterExpr { from: whole.from, to: last.value, unit: last.unit, span: span.to(end) };
        if whole.to < whole.from {
            return Err(Unreadable::new(whole.span, "the range runs from the smaller to the larger number"));
        }
    }
    parser.end()?;
    Ok(whole)
}

struct Parser {
    lexemes: Vec<Lexeme>,
    at: usize,
    depth: usize,
    length: usize,
}

impl Parser {
    fn new(text: &str) -> Result<Self, Unreadable> {
        let lexemes = tokens(text)?;
        if lexemes.is_empty() {
            return Err(Unreadable::new(Span::new(0, text.len()), "the expression is empty"));
        }
        Ok(Self { lexemes, at: 0, depth: 0, length: text.len() })
    }

    fn peek(&self) -> Option<&Token> {
        self.lexemes.get(self.at).map(|l| &l.token)
    }

    /// Where the next token stands; the end of the text when there is none.
    fn here(&self) -> Span {
        self.lexemes.get(self.at).map_or(Span::new(self.length, self.length), |l| l.span)
    }

    fn eat(&mut self, mark: &str) -> bool {
        let found = matches!(self.peek(), Some(Token::Mark(m)) if *m == mark);
        self.at += usize::from(found);
        found
    }

    fn eat_word(&mut self, word: &str) -> bool {
        let found = matches!(self.peek(), Some(Token::Word(w)) if w == word);
        self.at += usize::from(found);
        found
    }

    fn expect(&mut self, mark: &str, before: &str) -> Result<(), Unreadable> {
        if self.eat(mark) {
            return Ok(());
        }
        Err(Unreadable::new(self.here(), format!("`{mark}` is missing {before}")))
    }

    fn end(&self) -> Result<(), Unreadable> {
        let here = self.here();
        match self.peek() {
            None => Ok(()),
            Some(Token::Mark("<" | "<=" | ">" | ">=" | "=" | "!=")) => {
                Err(Unreadable::new(here, "comparisons can't be chained").help("join two comparisons with `and`"))
            }
            Some(Token::Word(word)) => Err(Unreadable::new(here, format!("`{word}` does not fit here"))
                .help("join conditions with `and` or `or`; write ids with hyphens")),
            Some(Token::Number { value, .. }) => {
                Err(Unreadable::new(here, format!("the number {value} does not fit here")))
            }
            Some(Token::Mark(mark)) => Err(Unreadable::new(here, format!("`{mark}` does not fit here"))),
        }
    }

    fn deeper<T>(&mut self, read: impl FnOnce(&mut Self) -> Result<T, Unreadable>) -> Result<T, Unreadable> {
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err(Unreadable::new(self.here(), format!("the expression is nested more than {DEEPEST} deep")));
        }
        let out = read(self);
        self.depth -= 1;
        out
    }

    fn or(&mut self) -> Result<Expr, Unreadable> {
        self.joined("or", Self::and, ExprKind::Or)
    }

    fn and(&mut self) -> Result<Expr, Unreadable> {
        self.joined("and", Self::not, ExprKind::And)
    }

    fn joined(
        &mut self,
        word: &str,
        part: fn(&mut Self) -> Result<Expr, Unreadable>,
        kind: fn(Vec<Expr>) -> ExprKind,
    ) -> Result<Expr, Unreadable> {
        let first = part(self)?;
        let mut parts = vec![first];
        while self.eat_word(word) {
            parts.push(part(self)?);
        }
        if parts.len() == 1 {
            return parts.pop().ok_or_else(|| Unreadable::new(self.here(), "the expression is empty"));
        }
        let start = parts.first().map_or(0, |e| e.span.start);
        let end = parts.last().map_or(0, |e| e.span.end);
        Ok(Expr { span: Span::new(start, end), kind: kind(parts) })
    }

    fn not(&mut self) -> Result<Expr, Unreadable> {
        let start = self.here();
        if self.eat_word("not") {
            let inner = self.deeper(Self::not)?;
            return Ok(Expr { span: start.to(inner.span), kind: ExprKind::Not(Box::new(inner)) });
        }
        self.compare()
    }

    fn compare(&mut self) -> Result<Expr, Unreadable> {
        let start = self.here();
        if self.eat_word("signs") {
            if !self.eat_word("has") {
                return Err(Unreadable::new(self.here(), "`has` is missing after `signs`")
                    .help("write `signs has spent-blooms`"));
            }
            let (sign, span) = self.word("a sign")?;
            return Ok(Expr { span: start.to(span), kind: ExprKind::SignsHas(sign, span) });
        }
        let left = self.sum()?;
        let here = self.here();
        let comparison = match self.peek() {
            Some(Token::Mark("<")) => Comparison::Less,
            Some(Token::Mark("<=")) => Comparison::AtMost,
            Some(Token::Mark(">")) => Comparison::More,
            Some(Token::Mark(">=")) => Comparison::AtLeast,
            Some(Token::Mark("=")) => Comparison::Equal,
            Some(Token::Mark("!=")) => Comparison::Unequal,
            Some(Token::Word(word)) if word == "in" => {
                self.at += 1;
                return self.list(left);
            }
            Some(Token::Word(word)) if word == "is" => {
                self.at += 1;
                if self.eat_word("absent") {
                    return Ok(Expr { span: left.span.to(here), kind: ExprKind::IsAbsent(Box::new(left)) });
                }
                return Err(Unreadable::new(self.here(), "only `is absent` may follow `is`")
                    .help("compare with `=`; there is no `is known`: what is not known stays unknown"));
            }
            _ => return Ok(left),
        };
        self.at += 1;
        if self.eat("=") {
            return Err(Unreadable::new(here, "`=` stands once").help("write `=`"));
        }
        let right = self.sum()?;
        Ok(Expr {
            span: left.span.to(right.span),
            kind: ExprKind::Compare(Box::new(left), comparison, Box::new(right)),
        })
    }

    fn list(&mut self, left: Expr) -> Result<Expr, Unreadable> {
        self.expect("{", "before the list")?;
        let mut items = vec![self.atom()?];
        while self.eat(",") {
            items.push(self.atom()?);
        }
        let end = self.here();
        self.expect("}", "after the list")?;
        Ok(Expr { span: left.span.to(end), kind: ExprKind::In(Box::new(left), items) })
    }

    fn sum(&mut self) -> Result<Expr, Unreadable> {
        let mut left = self.term()?;
        loop {
            let add = match self.peek() {
                Some(Token::Mark("+")) => true,
                Some(Token::Mark("-")) => false,
                _ => return Ok(left),
            };
            self.at += 1;
            let right = self.term()?;
            let span = left.span.to(right.span);
            let (left_box, right_box) = (Box::new(left), Box::new(right));
            left = Expr {
                span,
                kind: if add { ExprKind::Add(left_box, right_box) } else { ExprKind::Subtract(left_box, right_box) },
            };
        }
    }

    fn term(&mut self) -> Result<Expr, Unreadable> {
        let mut left = self.atom()?;
        loop {
            let times = match self.peek() {
                Some(Token::Mark("*")) => true,
                Some(Token::Mark("/")) => false,
                _ => return Ok(left),
            };
            self.at += 1;
            let (number, span) = self.number().map_err(|fault| {
                Unreadable::new(fault.span, "only a plain number may follow `*` or `/`")
                    .help("a product of two facts has no meaning here")
            })?;
            if !number.unit.is_empty() {
                return Err(Unreadable::new(span, "the number after `*` or `/` has no unit"));
            }
            if !times && number.value == 0.0 {
                return Err(Unreadable::new(span, "division by zero"));
            }
            let whole = left.span.to(span);
            left = Expr {
                span: whole,
                kind: if times {
                    ExprKind::Times(Box::new(left), number.value)
                } else {
                    ExprKind::Over(Box::new(left), number.value)
                },
            };
        }
    }

    fn number(&mut self) -> Result<(Literal, Span), Unreadable> {
        let span = self.here();
        match self.peek() {
            Some(Token::Number { value, unit }) => {
                let literal = Literal { value: *value, unit: unit.clone() };
                self.at += 1;
                Ok((literal, span))
            }
            _ => Err(Unreadable::new(span, "a number is missing here")),
        }
    }

    fn word(&mut self, what: &str) -> Result<(String, Span), Unreadable> {
        let span = self.here();
        match self.peek() {
            Some(Token::Word(word)) if !JOINERS.contains(&word.as_str()) => {
                let word = word.clone();
                self.at += 1;
                Ok((word, span))
            }
            _ => Err(Unreadable::new(span, format!("{what} is missing here"))),
        }
    }

    fn atom(&mut self) -> Result<Expr, Unreadable> {
        let start = self.here();
        if self.eat("-") {
            let (number, span) = self.number()?;
            let inner = Expr { span, kind: ExprKind::Number(number) };
            return Ok(Expr { span: start.to(span), kind: ExprKind::Negative(Box::new(inner)) });
        }
        if self.eat("(") {
            let inner = self.deeper(Self::or)?;
            let end = self.here();
            self.expect(")", "after the part in parentheses")?;
            return Ok(Expr { span: start.to(end), kind: inner.kind });
        }
        if matches!(self.peek(), Some(Token::Number { .. })) {
            let (number, span) = self.number()?;
            return Ok(Expr { span, kind: ExprKind::Number(number) });
        }
        let (path, span) = self.word("a fact or a number")?;
        if !self.eat("(") {
            return Ok(Expr { span, kind: ExprKind::Path(path) });
        }
        let mut arguments = Vec::new();
        if !matches!(self.peek(), Some(Token::Mark(")"))) {
            arguments.push(self.deeper(Self::argument)?);
            while self.eat(",") {
                arguments.push(self.deeper(Self::argument)?);
            }
        }
        let end = self.here();
        self.expect(")", "after the arguments")?;
        Ok(Expr { span: span.to(end), kind: ExprKind::Call(path, arguments) })
    }

    fn argument(&mut self) -> Result<Argument, Unreadable> {
        if self.eat_word("from") {
            return Ok(Argument::From(self.marker()?));
        }
        if self.eat_word("within") {
            let (number, span) = self.number()?;
            return Ok(Argument::Within(number, span));
        }
        Ok(Argument::Value(self.sum()?))
    }

    fn marker(&mut self) -> Result<MarkerExpr, Unreadable> {
        let start = self.here();
        let marker = self.atom()?;
        if !matches!(marker.kind, ExprKind::Path(_) | ExprKind::Call(..)) {
            return Err(Unreadable::new(marker.span, "a marker is missing here")
                .help("such as `hot_season.end` or `rises(tmean, 10 °C)`"));
        }
        let sign = match self.peek() {
            Some(Token::Mark("+")) => 1.0,
            Some(Token::Mark("-")) => -1.0,
            _ => return Ok(MarkerExpr { span: start.to(marker.span), marker: Box::new(marker), offset: None }),
        };
        self.at += 1;
        let (mut number, span) = self.number()?;
        number.value *= sign;
        Ok(MarkerExpr { span: start.to(span), marker: Box::new(marker), offset: Some((number, span)) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lang::print;

    #[test]
    fn what_is_printed_reads_the_same() {
        for text in [
            "plant.age >= 1 year and (signs has spent-blooms or signs has crowded-centre)",
            "not (mean(tmax, 7 days) - mean(tmin, 7 days) > 5 K) or climate.frost_free",
            "first_frost.median is absent or weeks_to(first_frost.median) < 8 weeks",
            "done(nitrogen, within 56 days) and heat_sum(10 °C, 30 °C, from since(trap-catch-codling)) > 120 °Cd",
            "soil.texture in {clay, clay-loam} and plant.height * 2 + 10 cm > 3 ft",
            "heat_sum(5 °C, from growing.start - 2 weeks) > -3.5 °Cd",
        ] {
            let once = print::expr(&condition(text).unwrap());
            assert_eq!(print::expr(&condition(&once).unwrap()), once, "{text}");
        }
    }

    #[test]
    fn and_binds_tighter_than_or_and_not_tighter_than_and() {
        assert_eq!(print::expr(&condition("a or b and not c").unwrap()), "a or (b and not c)");
    }

    #[test]
    fn a_side_has_alternatives_each_with_its_own_offset() {
        let side = side("hot_season.end - 4 weeks else warmest_week + 2 weeks").unwrap();
        assert_eq!(side.choices.len(), 2);
        assert_eq!(side.choices[1].offset.as_ref().unwrap().0.value, 2.0);
    }

    #[test]
    fn a_range_of_days_is_read() {
        let after = after("7..14 days").unwrap();
        assert_eq!((after.from, after.to, after.unit.as_str()), (7.0, 14.0, "days"));
    }

    #[test]
    fn faults_name_the_place_and_the_cure() {
        for (text, start, message, help) in [
            ("a < b < c", 6, "comparisons can't be chained", Some("join two comparisons with `and`")),
            ("plant.age >= ", 13, "a fact or a number is missing here", None),
            (
                "a * b > 3",
                4,
                "only a plain number may follow `*` or `/`",
                Some("a product of two facts has no meaning here"),
            ),
            ("(a or b", 7, "`)` is missing after the part in parentheses", None),
            (
                "soil.ph is known",
                11,
                "only `is absent` may follow `is`",
                Some("compare with `=`; there is no `is known`: what is not known stays unknown"),
            ),
            ("", 0, "the expression is empty", None),
            (
                "spent blooms",
                6,
                "`blooms` does not fit here",
                Some("join conditions with `and` or `or`; write ids with hyphens"),
            ),
        ] {
            let fault = condition(text).unwrap_err();
            assert_eq!(
                (fault.span.start, fault.message.as_str(), fault.help.as_deref()),
                (start, message, help),
                "{text}"
            );
        }
    }

    #[test]
    fn too_deep_is_refused_and_does_not_overflow() {
        let text = format!("{}a{}", "(".repeat(5000), ")".repeat(5000));
        assert!(condition(&text).unwrap_err().message.contains("nested"));
    }
}
