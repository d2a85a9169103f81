//! Is what is there read, where somebody has left out columns or lines, quoted or indented a table?
