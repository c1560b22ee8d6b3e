//! Fixed arithmetic that everything else is measured against: what no change of the product can make faster or slower.

/// Steps of one go.
const STEPS: u32 = 10_000;

/// Sums, products, roots, quotients, sines and angles in about the mix of a kernel, from a number near 1; the result only keeps the work from being left out.
#[must_use]
pub fn work(start: f64) -> f64 {
    let (mut x, mut y, mut z) = (start, 0.5, 0.25);
    for step in 0..STEPS {
        let size = (x * x + y * y + z * z).sqrt();
        (x, y, z) = (y / size + 0.1, z / size - 0.2, x / size + 0.3);
        if step % 8 == 0 {
            let (sine, cosine) = x.sin_cos();
            z += 1e-3 * (y * sine - x * cosine).atan2(size);
        }
    }
    x + y + z
}
