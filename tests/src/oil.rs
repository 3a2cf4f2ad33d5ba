//! Oil production 1996 to 2007 and its simple exponential smoothing: Hyndman and Athanasopoulos,
//! Forecasting: principles and practice, 1st edition, chapter 7 (P), the levels as statsmodels' own
//! tests hold them (C).

/// The observations.
pub const OIL: [f64; 12] = [
    446.6565229,
    454.4733065,
    455.6629740,
    423.6322388,
    456.2713279,
    440.5880501,
    425.3325201,
    485.1494479,
    506.0481621,
    526.7919833,
    514.2688890,
    494.2110193,
];

/// The levels at a weight of 0.2, begun at the first observation.
pub const OIL_LEVELS: [f64; 12] = [
    446.6565, 448.2199, 449.7085, 444.4932, 446.8489, 445.5967, 441.5439, 450.2650, 461.4216,
    474.4957, 482.4503, 484.8025,
];
