//! Places on a page.

/// A point, y downward.
pub(super) type Point = (f64, f64);

/// An affine map, as the six numbers a PDF writes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Matrix(pub [f64; 6]);

impl Matrix {
    /// Leaves every point where it is.
    pub const STILL: Matrix = Matrix([1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);

    /// First `self`, then `next`.
    pub fn then(self, next: Matrix) -> Matrix {
        let (a, b) = (self.0, next.0);
        Matrix([
            a[0] * b[0] + a[1] * b[2],
            a[0] * b[1] + a[1] * b[3],
            a[2] * b[0] + a[3] * b[2],
            a[2] * b[1] + a[3] * b[3],
            a[4] * b[0] + a[5] * b[2] + b[4],
            a[4] * b[1] + a[5] * b[3] + b[5],
        ])
    }

    /// Where a point comes to lie.
    pub fn at(self, (x, y): Point) -> Point {
        let m = self.0;
        (x * m[0] + y * m[2] + m[4], x * m[1] + y * m[3] + m[5])
    }
}
