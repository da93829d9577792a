//! How much water the sun and the warmth of a month draw from the ground.

use std::f64::consts::PI;

/// Days of each month from January, in a common year.
pub const DAYS: [f64; 12] =
    [31.0, 28.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];

/// The sun's declination (radians) on a day of the year (1–366).
///
/// Source: FAO-56, equation 24 (from memory; its value in example 8 was read).
pub fn declination(day: f64) -> f64 {
    0.409 * (2.0 * PI * day / 365.0 - 1.39).sin()
}

/// The angle (radians) from noon to sunset; nothing in a polar night, π where
/// the sun doesn't set. `latitude` in degrees, south below zero.
///
/// Source: FAO-56, equation 25 (opened as code).
pub fn sunset_angle(latitude: f64, day: f64) -> f64 {
    (-latitude.to_radians().tan() * declination(day).tan()).clamp(-1.0, 1.0).acos()
}

/// Hours from sunrise to sunset.
///
/// Source: FAO-56, equation 34 (opened as code).
pub fn daylength(latitude: f64, day: f64) -> f64 {
    24.0 / PI * sunset_angle(latitude, day)
}

/// Sunshine above the air, MJ/m² a day.
///
/// Source: FAO-56, equations 21 and 23 (opened as code).
pub fn radiation(latitude: f64, day: f64) -> f64 {
    /// The solar constant, MJ/m² a minute. Source: FAO-56, equation 21 (opened as code).
    const SUN: f64 = 0.0820;
    let distance = 1.0 + 0.033 * (2.0 * PI * day / 365.0).cos();
    let (at, sun, sunset) = (latitude.to_radians(), declination(day), sunset_angle(latitude, day));
    let height = sunset * at.sin() * sun.sin() + at.cos() * sun.cos() * sunset.sin();
    24.0 * 60.0 / PI * SUN * distance * height.max(0.0)
}

/// What short grass with water enough evaporates, mm a day, from the mean
/// lowest and highest temperature of the day (°C) and the sunshine above the
/// air (MJ/m² a day). Never below nothing.
///
/// Source: FAO-56, equations 20 and 52 (opened as code). It comes out too high
/// in damp climates, and means little in winter beyond 55° of latitude.
pub fn hargreaves(lowest: f64, highest: f64, radiation: f64) -> f64 {
    /// Water that a MJ/m² evaporates, mm. Source: FAO-56, equation 20 (opened as code).
    const MM_PER_MJ: f64 = 0.408;
    let mean = f64::midpoint(lowest, highest);
    let swing = (highest - lowest).max(0.0);
    (0.0023 * (mean + 17.8) * swing.sqrt() * MM_PER_MJ * radiation).max(0.0)
}

/// The same for a whole month (0 is January), mm.
///
/// Source: FAO-56, day 30.4 × month − 15 stands for the month (from memory).
pub fn monthly(latitude: f64, month: usize, (lowest, highest): (f64, f64)) -> f64 {
    let day = (30.4 * (month as f64 + 1.0) - 15.0).floor();
    DAYS[month] * hargreaves(lowest, highest, radiation(latitude, day))
}
