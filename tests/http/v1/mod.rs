mod quantities;
