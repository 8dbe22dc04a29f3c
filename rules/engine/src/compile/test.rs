//! What a test says of a value.

use super::term::Test;
use crate::fact::value::{Truth, Value};
use crate::lang::ast::Comparison;

impl Test {
    /// The test of a value: unknown of unknown; of absent only `is absent` and `!=` are true.
    #[must_use]
    pub fn of(&self, value: Value) -> Truth {
        match (self, value) {
            (_, Value::Unknown) => Truth::Unknown,
            (Self::IsAbsent, value) => Truth::known(value == Value::Absent),
            (Self::Number(Comparison::Unequal, _) | Self::Choice(Comparison::Unequal, _), Value::Absent) => Truth::True,
            (Self::Holds, Value::Truth(yes)) => Truth::known(yes),
            (Self::Number(comparison, n), Value::Number(x)) => Truth::known(comparison.holds(x.total_cmp(n))),
            (Self::OneOfNumbers(list), Value::Number(x)) => Truth::known(list.contains(&x)),
            (Self::Choice(comparison, c), Value::Choice(x)) => Truth::known(comparison.holds(x.cmp(c))),
            (Self::OneOf(list), Value::Choice(x)) => Truth::known(list.contains(&x)),
            _ => Truth::False,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comparisons_with_absent_are_false_but_for_unequal() {
        for comparison in
            [Comparison::Less, Comparison::AtMost, Comparison::More, Comparison::AtLeast, Comparison::Equal]
        {
            assert_eq!(Test::Number(comparison, 1.0).of(Value::Absent), Truth::False);
        }
        assert_eq!(Test::Number(Comparison::Unequal, 1.0).of(Value::Absent), Truth::True);
        assert_eq!(Test::IsAbsent.of(Value::Absent), Truth::True);
        assert_eq!(Test::IsAbsent.of(Value::Number(1.0)), Truth::False);
        assert_eq!(Test::IsAbsent.of(Value::Unknown), Truth::Unknown);
    }

    #[test]
    fn every_test_of_unknown_is_unknown() {
        for test in
            [Test::Holds, Test::Number(Comparison::Less, 1.0), Test::OneOf(vec![1]), Test::Choice(Comparison::Equal, 0)]
        {
            assert_eq!(test.of(Value::Unknown), Truth::Unknown);
        }
    }
}
