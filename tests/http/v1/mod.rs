mod advice;
mod advice_faces;
mod advice_refused;
mod coordinates;
mod every_field;
mod quantities;
mod season;
mod vocabulary;
