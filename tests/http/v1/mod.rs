mod advice;
mod advice_faces;
mod advice_refused;
mod every_field;
mod quantities;
mod season;
mod vocabulary;
mod words;
