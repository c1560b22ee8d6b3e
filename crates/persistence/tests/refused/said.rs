//! The broken files by name, each with what is said about it.

pub const SAID: [(&str, &str); 109] = [
    (
        "arm-of-no-length",
        "line 7, column 93: front left corner: lower_arm.ball_joint lies on the axis through the lower arm's pivots, so it can't swing about it",
    ),
    (
        "ball-joint-on-its-axis",
        "line 6, column 97: front left corner: upper_arm.ball_joint lies on the axis through the upper arm's pivots, so it can't swing about it",
    ),
    (
        "blank",
        "the file is empty; expected a build file, which starts with `(` and `format: 1`",
    ),
    (
        "bracket-missing",
        "line 11, column 2: found the end of the file, expected `,` or the `)` that closes the bracket of line 1",
    ),
    (
        "bracket-of-another-kind",
        "line 8, column 41: found `]`, expected `,` or the `)` that closes the bracket of line 8",
    ),
    (
        "bracket-too-many",
        "line 11, column 2: found `)`, expected nothing after the last `)`",
    ),
    (
        "coincident-pivots",
        "line 7, column 63: front left corner: lower_arm.front_pivot and lower_arm.rear_pivot are at the same place",
    ),
    (
        "coincident-tie-rod",
        "line 8, column 51: front left corner: tie_rod.inner and tie_rod.outer are at the same place",
    ),
    (
        "colon-missing",
        "line 4, column 10: found `inch`, expected `:` after the field name unit",
    ),
    (
        "comma-missing",
        "line 5, column 5: found `front`, expected `,` or the `)` that closes the bracket of line 1",
    ),
    (
        "comment-open",
        "line 4, column 17: found a comment without an end, expected its end",
    ),
    (
        "control-sign",
        "line 4, column 11: found the control character U+0000, expected a field name, a value, `,` or a bracket",
    ),
    (
        "coordinate-a-word",
        "line 8, column 33: front.tie_rod.inner is (-3.0, six, 8.5); expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "coordinate-fraction",
        "line 8, column 36: found a fraction, expected a decimal number, such as 12.625",
    ),
    (
        "coordinate-in-quotes",
        r#"line 8, column 33: front.tie_rod.inner is (-3.0, "6", 8.5); expected three numbers in brackets, such as (0.0, 22.0, 6.5)"#,
    ),
    (
        "coordinates-four-decimal-comma",
        "line 8, column 26: front.tie_rod.inner is (-3,0, 6.0, 8.5), 4 numbers; expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "coordinates-in-square-brackets",
        "line 8, column 26: front.tie_rod.inner is [-3.0, 6.0, 8.5]; expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "coordinates-named",
        "line 8, column 26: front.tie_rod.inner is (x: -3.0, y: 6.0, z: 8.5); expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "coordinates-none",
        "line 8, column 26: front.tie_rod.inner is empty; expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "coordinates-two",
        "line 8, column 26: front.tie_rod.inner is (-3.0, 6.0), 2 numbers; expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "curly-bracket",
        "line 5, column 12: found a curly bracket, expected `(` and `)` around fields",
    ),
    (
        "deep",
        "line 1, column 62: found more than 32 brackets within each other, expected a value",
    ),
    (
        "empty",
        "the file is empty; expected a build file, which starts with `(` and `format: 1`",
    ),
    (
        "end-missing",
        "line 10, column 7: found the end of the file, expected a field name or the `)` that closes the bracket of line 1",
    ),
    (
        "equals-sign",
        "line 4, column 10: found `=`, expected a field name, a value, `,` or a bracket",
    ),
    (
        "escape-unknown",
        r#"line 3, column 12: title is "Broken \q purpose"; expected text in double quotes with every backslash in it written twice"#,
    ),
    (
        "field-mistyped",
        "line 9, column 17: unknown field `center` in front.wheel; the nearest known name is `centre`",
    ),
    (
        "field-of-another-place",
        "line 9, column 9: unknown field `notes` in front; expected one of upper_arm, lower_arm, tie_rod, wheel, spring, travel, rack, rack_end, joint_bolts, parts, right",
    ),
    (
        "field-twice",
        "line 5, column 5: unit stands here a second time; expected it once",
    ),
    (
        "field-unknown",
        "line 9, column 44: unknown field `radius_under_load` in front.wheel; expected one of centre, loaded_radius, toe_deg, camber_deg",
    ),
    (
        "format-a-word",
        r#"line 2, column 13: the format is "one"; expected `format: 1`"#,
    ),
    (
        "format-broken",
        "line 2, column 13: the format is 1.5; expected `format: 1`",
    ),
    (
        "format-huge",
        "line 2, column 13: the format is 99999999999999999999999; expected `format: 1`",
    ),
    (
        "format-missing",
        "line 1, column 1: the file does not say its format; expected `format: 1` as its first field, so that it is not misread",
    ),
    (
        "format-newer-with-unknown-signs",
        "line 2, column 13: the file is format 7, and this version of Trammel reads up to format 1; nothing was read, so open it with a newer version",
    ),
    (
        "format-newer",
        "line 2, column 13: the file is format 2, and this version of Trammel reads up to format 1; nothing was read, so open it with a newer version",
    ),
    (
        "format-older",
        "line 2, column 13: the format is 0; expected `format: 1`",
    ),
    (
        "front-missing",
        "line 1, column 1: the build has no front; expected `front: (...)`",
    ),
    (
        "hit-at-nowhere",
        "line 11, column 15: hit.at is bumper; expected wheel_centre or contact",
    ),
    (
        "hit-without-direction",
        "line 11, column 22: hit.direction is no direction, expected three numbers, not all nought",
    ),
    (
        "json",
        r#"this is not a build file: found `{ "format": 1, "title": "Two-seat trail ...`, expected `(` and fields, the first of them `format: 1`"#,
    ),
    (
        "letter",
        "this is not a build file: found `Dear Sir, please find the kart enclosed.`, expected `(` and fields, the first of them `format: 1`",
    ),
    (
        "limit-negative",
        "line 11, column 30: limits.toe_change_deg is -0.3, expected a number above nought and at most a million",
    ),
    (
        "list",
        "this is not a build file: found `[1, 2, 3]`, expected `(` and fields, the first of them `format: 1`",
    ),
    (
        "lock-not-a-list",
        r#"line 11, column 13: locked is "front.tie_rod.inner.z"; expected a list of coordinates, such as ["front.tie_rod.inner.z"]"#,
    ),
    (
        "lock-unknown",
        r#"line 11, column 39: locked is "front.tie_rod.inner.height"; expected axle, point and axis, such as "front.tie_rod.inner.z""#,
    ),
    (
        "mass-bare",
        "line 11, column 21: vehicle.mass is 300.0; expected kg(...) or lb(...), such as kg(300.0) or lb(650.0)",
    ),
    (
        "mass-negative",
        "line 12, column 15: vehicle.mass is -300, expected a number above nought and at most a million",
    ),
    (
        "mass-unknown-unit",
        "line 11, column 21: vehicle.mass is stone(46.0); expected kg(...) or lb(...), such as kg(300.0) or lb(650.0)",
    ),
    (
        "mass-without-number",
        "line 11, column 21: vehicle.mass is kg; expected kg(...) or lb(...), such as kg(300.0) or lb(650.0)",
    ),
    (
        "name-in-front",
        r#"this is not a build file: found `kart(     format: 1,     title: "Broken ...`, expected `(` and fields, the first of them `format: 1`"#,
    ),
    (
        "not-text",
        "line 3, column 15: this is not a text file: byte 31 is not UTF-8; expected a build file, which is plain text",
    ),
    (
        "notes-not-text",
        "line 11, column 12: notes is 5; expected text in double quotes",
    ),
    (
        "number-far-away",
        "line 8, column 26: front left corner: tie_rod.inner is not a usable number",
    ),
    (
        "number-hexadecimal",
        "line 9, column 59: front.wheel.loaded_radius is 0x10; expected a number, such as 12.625",
    ),
    (
        "number-in-quotes",
        r#"line 9, column 74: front.wheel.toe_deg is "0"; expected a number, such as 12.625"#,
    ),
    (
        "number-infinite",
        "line 9, column 59: front.wheel.loaded_radius is inf; expected a finite number, such as 12.625",
    ),
    (
        "number-instead-of-part",
        "line 8, column 18: front.tie_rod is 6.0; expected fields in brackets, such as (name: value)",
    ),
    (
        "number-instead-of-point",
        "line 8, column 26: front.tie_rod.inner is 6.0; expected three numbers in brackets, such as (0.0, 22.0, 6.5)",
    ),
    (
        "number-minus-infinite",
        "line 9, column 91: front.wheel.camber_deg is -inf; expected a finite number, such as 12.625",
    ),
    (
        "number-nan",
        "line 8, column 38: front.tie_rod.inner is NaN; expected a finite number, such as 12.625",
    ),
    (
        "number-overflows",
        "line 8, column 38: front.tie_rod.inner is 1e999; expected a finite number, such as 12.625",
    ),
    (
        "number-with-unit",
        "line 9, column 59: front.wheel.loaded_radius is 10.5in; expected a number, such as 12.625",
    ),
    (
        "number",
        "this is not a build file: found `12.625`, expected `(` and fields, the first of them `format: 1`",
    ),
    (
        "part-missing",
        "line 5, column 12: front has no tie_rod; expected `tie_rod: (...)`",
    ),
    (
        "point-missing",
        "line 7, column 20: front.lower_arm has no ball_joint; expected `ball_joint: (x, y, z)`",
    ),
    (
        "point-twice",
        "line 8, column 44: front.tie_rod.inner stands here a second time; expected it once",
    ),
    (
        "quote-missing",
        "line 3, column 12: found text in quotes without an end, expected its end",
    ),
    (
        "quote-single",
        "line 3, column 12: found a single quote, expected text in double quotes",
    ),
    (
        "rack-mistyped",
        "line 10, column 16: unknown field `travel_per_turns` in front.rack; the nearest known name is `travel_per_turn`",
    ),
    (
        "rack-travel-nought",
        "line 10, column 24: front.rack.travel is 0, expected a number above nought and at most a million",
    ),
    (
        "rack-without-direction",
        "line 10, column 22: front left corner: rack.axis has no direction",
    ),
    (
        "rear-incomplete",
        "line 11, column 11: rear has no upper_arm; expected `upper_arm: (...)`",
    ),
    (
        "rear-with-rack",
        "line 16, column 15: rear.rack has no place here: the rear tie rod ends on the chassis, not on a rack",
    ),
    (
        "right-point-on-the-left",
        "line 10, column 33: front.right.wheel.centre is at y = 25, expected a negative y: y is positive to the left, and this is a right-hand point",
    ),
    (
        "right-spring-without-left",
        "line 10, column 37: front.right.spring.arm_mount has no place here: the left side has no spring",
    ),
    (
        "right-tie-rod-of-no-length",
        "line 11, column 20: front right corner: tie_rod.inner and tie_rod.outer are at the same place",
    ),
    (
        "right-unknown",
        "line 10, column 25: unknown field `loaded_radius` in front.right.wheel; expected one of centre",
    ),
    (
        "share-in-percent",
        "line 11, column 28: vehicle.front_share is 45, expected a share between 0 and 1, such as 0.45",
    ),
    (
        "spring-of-no-length",
        "line 10, column 75: front left corner: spring.chassis_mount and spring.arm_mount are at the same place",
    ),
    (
        "spring-open-shorter-than-closed",
        "line 15, column 28: front.spring.closed_length is 15, expected less than spring.open_length",
    ),
    (
        "spring-rate-bare",
        "line 10, column 100: front.spring.rate is 115.0; expected n_per_mm(...) or lb_per_in(...), such as lb_per_in(115.0)",
    ),
    (
        "spring-unknown-arm",
        "line 10, column 23: front.spring.arm is middle; expected lower or upper",
    ),
    (
        "text-behind",
        "line 12, column 1: found `that`, expected nothing after the last `)`",
    ),
    (
        "toe-a-quarter-turn",
        "line 9, column 74: front left corner: wheel.toe_deg is not a usable number",
    ),
    (
        "travel-a-number",
        "line 10, column 17: front.travel is 4.0; expected the stops in brackets, such as (bump: 4.0, droop: 3.5)",
    ),
    (
        "travel-negative",
        "line 10, column 36: front.travel.droop is -3.5, expected a number above nought and at most a million",
    ),
    (
        "unit-in-quotes",
        r#"line 4, column 11: unit is "inch"; expected inch or mm"#,
    ),
    (
        "unit-missing",
        "line 1, column 1: the build has no unit; expected `unit: inch` or `unit: mm`",
    ),
    (
        "unit-unknown",
        "line 4, column 11: unit is feet; expected inch or mm",
    ),
    (
        "upper-ball-joint-below",
        "line 5, column 12: front left corner: the upper ball joint must stand well above the lower one: the steering axis lies nearly flat",
    ),
    (
        "utf-16",
        "line 1, column 1: this is not a text file: byte 0 is not UTF-8; expected a build file, which is plain text",
    ),
    (
        "value-missing",
        "line 4, column 11: found `,`, expected a value",
    ),
    (
        "wheel-of-no-radius",
        "line 9, column 59: front left corner: wheel.loaded_radius must be more than nothing",
    ),
    (
        "wheel-without-radius",
        "line 9, column 16: front.wheel has no loaded_radius; expected `loaded_radius: a number`",
    ),
    (
        "zip",
        "this is not a build file: found `PK        `, expected `(` and fields, the first of them `format: 1`",
    ),
    (
        "bolt-of-no-direction",
        "line 10, column 30: front.joint_bolts.inner is no direction, expected three numbers, not all nought",
    ),
    (
        "bolt-unknown",
        "line 10, column 30: front.joint_bolts.outer is upright; expected fore_aft, vertical, lateral or direction(x, y, z)",
    ),
    (
        "keep-out-flat",
        "line 11, column 41: keep_outs.1.corners is [1.0, 2.0, 1.0, 3.0], expected two opposite corners that differ in every coordinate",
    ),
    (
        "keep-out-nameless",
        r#"line 13, column 16: keep_outs.2.name is empty, expected what is there, such as "engine""#,
    ),
    (
        "keep-out-without-corners",
        "line 12, column 9: keep_outs.1 has no corners; expected `corners: front((y, z), (y, z)) or box((x, y, z), (x, y, z)), two opposite corners`",
    ),
    (
        "keep-out-endless",
        "line 11, column 60: keep_outs.1.corners is inf; expected a finite number, such as 12.625",
    ),
    (
        "keep-out-of-one-corner",
        "line 11, column 47: keep_outs.1.corners is front((1.0, 2.0)); expected front((y, z), (y, z)) or box((x, y, z), (x, y, z)), two opposite corners",
    ),
    (
        "keep-out-misspelt",
        "line 11, column 18: unknown field `nam` in keep_outs.1; the nearest known name is `name`",
    ),
    (
        "tolerance-negative",
        "line 11, column 24: tolerances.tape is -0.1, expected nought or more, and at most a million",
    ),
    (
        "tolerance-unknown-way",
        "line 11, column 25: tolerances.usual is laser; expected jig_drilled, tape, hand_held or deviation(...)",
    ),
    (
        "tolerance-point-unknown",
        r#"line 11, column 35: tolerances.points.1.point is "front.tie_rod.middle"; expected axle and point, such as "front.tie_rod.inner", or a coordinate of it"#,
    ),
    (
        "tolerance-point-twice",
        r#"line 13, column 17: tolerances.points.2.point is "front.tie_rod.inner"; expected every point once"#,
    ),
    (
        "tolerance-point-negative",
        "line 11, column 64: tolerances.points.1.made is -0.1, expected nought or more, and at most a million",
    ),
];
