//! Drawings and their files, measured from inside the program; the files are measured from outside in the acceptance tests.

mod dxf;
mod look;
mod pages;
mod pdf;
mod sample;
mod svg;
mod tables;
