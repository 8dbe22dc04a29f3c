//! The words around an answer.

use crate::v1::advice::words::{AdviceBand, AdviceStatus};
use crate::v1::question::choices::Language;
use crate::v1::question::date::Date;

use chrono::Datelike as _;
use lammas_agronomy::calendar::Day;

/// Words in the language of an answer.
#[derive(Clone, Copy, Debug)]
pub(super) struct Headings(pub(super) Language);

macro_rules! words {
    ($($name:ident $en:literal $es:literal;)*) => {
        impl Headings {
            $(pub(super) fn $name(self) -> &'static str {
                self.pick($en, $es)
            })*
        }
    };
}

words! {
    check_first "Check first" "Antes mire";
    how "How" "Cómo";
    amount "How much" "Cuánto";
    material "With" "Con";
    why "Why" "Por qué";
    mind "Mind" "Cuidado";
    apart "Keep apart" "Separe";
    repeat "Again" "Repita";
    expect "Expect" "Espere";
    professional "Call" "Llame";
    emergency "CALL NOW" "LLAME YA";
    window "When" "Cuándo";
    after "After" "Después de";
    wait "LEAVE ALONE, OR WAIT" "DÉJELO ESTAR, O ESPERE";
    worth_knowing "WORTH KNOWING" "CONVIENE SABER";
    causes "WHAT IT MAY BE" "QUÉ PUEDE SER";
    understood "Understood" "Entendido";
    unsure "Not sure" "Dudoso";
    not_understood "Not understood" "No entendido";
    ask "TO SAY MORE, TELL" "PARA DECIR MÁS, DIGA";
    depends "HANGS ON THAT" "DEPENDE DE ESO";
    assumed "Assumed" "Se supone";
    look_again "Look again" "Vuelva a mirar";
    changes_with "Only you can change it" "Solo usted puede cambiarlo";
    days "days" "días";
    usual "usually" "lo usual";
    needs "needs" "falta";
    capped "the most it bears" "lo máximo que admite";
    holds_until "The same until" "Igual hasta el";
    then "then" "después";
    more_of_it "more" "más";
    all_year "any day" "cualquier día";
    best "best" "mejor";
    yes "yes" "sí";
    cut "NOT SHOWN, BUT MIND" "NO SE MUESTRA, PERO CUIDE";
    next "Next" "Lo próximo";
    weather "Weather" "Tiempo";
    observed "observed to" "observado hasta el";
    forecast "forecast to" "previsto hasta el";
    issued "issued" "emitido el";
}

impl Headings {
    pub(super) fn pick(self, en: &'static str, es: &'static str) -> &'static str {
        if self.0 == Language::Es { es } else { en }
    }

    pub(super) fn band(self, band: AdviceBand) -> &'static str {
        match band {
            AdviceBand::Now => self.pick("NOW", "AHORA"),
            AdviceBand::ThisWeek => self.pick("THIS WEEK", "ESTA SEMANA"),
            AdviceBand::ThisMonth => self.pick("THIS MONTH", "ESTE MES"),
            AdviceBand::Later => self.pick("LATER", "MÁS ADELANTE"),
        }
    }

    pub(super) fn status(self, status: AdviceStatus, tasks: usize) -> String {
        match status {
            AdviceStatus::Advised if tasks == 1 => self.pick("one thing to do", "una cosa por hacer").to_owned(),
            AdviceStatus::Advised => format!("{tasks} {}", self.pick("things to do", "cosas por hacer")),
            AdviceStatus::NothingDue => self.pick("nothing is due", "no toca nada").to_owned(),
            AdviceStatus::NeedsFacts => self
                .pick("more must be known before anything can be advised", "hay que saber más antes de aconsejar")
                .to_owned(),
        }
    }

    /// `15 September` or `15 de septiembre`.
    pub(super) fn day(self, Date(date): Date) -> String {
        lammas_engine::explain::words::date(Day::from_date(date), self.0.word())
    }

    /// The same with its year.
    pub(super) fn date(self, date: Date) -> String {
        format!("{}{} {}", self.day(date), self.pick("", " de"), date.0.year())
    }
}
