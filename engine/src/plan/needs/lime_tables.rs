//! The printed lime tables, as whole numbers.

/// Lime by Sikora buffer, tenths of a ton per acre of 100-score lime for the
/// top 6 in. Rows from buffer pH 6.9 down to 4.8 in steps of 0.1; columns for
/// the target pH of [`SIKORA_TARGETS`].
/// Source: Oregon State University EM 9585, 2025 (opened).
pub(super) static SIKORA: [[u8; 5]; 22] = [
    [0, 0, 5, 8, 10],
    [0, 4, 8, 12, 16],
    [2, 7, 11, 16, 22],
    [4, 9, 15, 21, 27],
    [7, 12, 18, 25, 33],
    [9, 15, 21, 29, 38],
    [11, 17, 25, 33, 44],
    [13, 20, 28, 37, 49],
    [15, 23, 31, 42, 55],
    [17, 25, 35, 46, 60],
    [19, 28, 38, 50, 66],
    [22, 31, 41, 54, 71],
    [27, 40, 55, 72, 99],
    [31, 45, 62, 83, 114],
    [35, 51, 70, 93, 129],
    [38, 56, 77, 103, 143],
    [42, 62, 85, 113, 158],
    [46, 67, 92, 123, 173],
    [50, 73, 100, 130, 187],
    [53, 78, 107, 140, 202],
    [57, 84, 115, 150, 217],
    [61, 89, 122, 163, 232],
];
/// Buffer pH of the first row of [`SIKORA`].
/// Source: Oregon State University EM 9585 (opened).
pub(super) const SIKORA_FROM: f64 = 6.9;
/// Buffer pH of its last row.
/// Source: Oregon State University EM 9585 (opened).
pub(super) const SIKORA_TO: f64 = 4.8;
/// Target pH of its columns.
/// Source: Oregon State University EM 9585 (opened).
pub(super) const SIKORA_TARGETS: [f64; 5] = [5.6, 6.0, 6.4, 6.8, 7.2];

/// Lime for turf by exchangeable acidity: tenths of meq/100 g, then pounds of
/// pure lime per 1000 sq ft for the target pH of [`TURF_TARGETS`].
/// Source: Penn State, Turf handbook, lime recommendations (opened).
pub(super) static TURF: [[u16; 4]; 38] = [
    [20, 50, 50, 50],
    [26, 50, 50, 70],
    [33, 50, 50, 70],
    [39, 50, 70, 90],
    [46, 50, 70, 110],
    [52, 50, 90, 110],
    [58, 50, 90, 140],
    [65, 70, 110, 160],
    [71, 90, 110, 160],
    [78, 90, 140, 180],
    [84, 110, 140, 180],
    [90, 110, 160, 210],
    [97, 140, 180, 230],
    [103, 140, 180, 230],
    [110, 160, 210, 250],
    [116, 160, 210, 280],
    [123, 180, 230, 280],
    [129, 180, 250, 300],
    [135, 210, 250, 320],
    [142, 210, 280, 320],
    [148, 230, 280, 340],
    [155, 230, 300, 370],
    [161, 250, 320, 370],
    [168, 250, 320, 390],
    [174, 280, 340, 390],
    [180, 280, 340, 410],
    [187, 300, 370, 440],
    [193, 300, 390, 440],
    [200, 320, 390, 460],
    [206, 320, 410, 480],
    [212, 340, 410, 480],
    [219, 340, 460, 510],
    [225, 370, 460, 530],
    [232, 370, 460, 530],
    [238, 390, 480, 550],
    [245, 390, 480, 570],
    [251, 410, 510, 570],
    [257, 410, 530, 600],
];
/// Target pH of its columns.
/// Source: Penn State, Turf handbook (opened).
pub(super) const TURF_TARGETS: [f64; 3] = [6.0, 6.5, 7.0];
