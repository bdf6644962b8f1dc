using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile;

/// <summary>Every kind of problem that a project file can have; docs/problems.md is made from this table.</summary>
public static class ProblemCodes
{
    // R01 to R09: the file and its YAML
    public static readonly ProblemCode CannotRead = Error("R01", "file cannot be read",
        "The file is missing, may not be opened, or is not UTF-8 text.",
        "Check the path; save the file as UTF-8.");

    public static readonly ProblemCode Syntax = Error("R02", "YAML syntax",
        "The text is not well-formed YAML. Reading stops here, so that other faults of the file show only when this one is mended.",
        "Look at the place named and just before it: brackets, quotes, colons, and spaces (never tabs) as indentation.");

    public static readonly ProblemCode NotUsed = Error("R03", "YAML feature that project files do not use",
        "Anchors, aliases, merge keys, tags, several documents in one file and keys that are lists are refused, so that every value stands where it is read.",
        "Write the value out where it is needed.");

    public static readonly ProblemCode TooLarge = Error("R04", "file too large or nested too deep",
        "The file has more text, values or nesting than any wall needs.",
        "Split the job into several files, or look for text that was pasted by mistake.");

    public static readonly ProblemCode DuplicateKey = Error("R05", "key given twice",
        "A key stands twice in the same block; only one can be meant.",
        "Remove one of the two.");

    public static readonly ProblemCode FormFile = Error("R06", "not a form",
        "The workbook is not a form of this program, is damaged, has a password, or is not .xlsx; or one of its sheets has lost its row of headings.",
        "Fill in a form that start --form wrote, and save it as .xlsx without a password.");

    public static readonly ProblemCode FormCell = Error("R07", "cell of a form that cannot be read",
        "A cell shows an error, has a formula without a result, became a date, is merged with others, or stands where nothing says what it is for.",
        "Mend the cell that the message names.");

    public static readonly ProblemCode FormSheetPassed = new("R08", Severity.Notice, "sheet of a form that is not read",
        "The workbook has a sheet that is none of the form's. It is passed over.",
        "Nothing, if it is your own; else give it the name that the form has.");

    // R10 to R19: keys and values
    public static readonly ProblemCode UnknownKey = Error("R10", "unknown key",
        "The key is not in the key table, or does not belong in this block.",
        "Look for a slip of the pen or wrong indentation; docs/project-file.md lists the keys of each block.");

    public static readonly ProblemCode MissingKey = Error("R11", "missing key",
        "A key without a default is missing.",
        "Add it; docs/project-file.md shows an example.");

    public static readonly ProblemCode EmptyValue = Error("R12", "no value",
        "The key has no value. An empty value is never taken as 0. A # that is not in quotes starts a comment and empties the value.",
        "Give a value, or leave the key out. Write bar sizes in quotes: \"#8\".");

    public static readonly ProblemCode WrongType = Error("R13", "wrong kind of value",
        "A list stands where a single value is needed, a text where a number is needed, and so on.",
        "Write the value in the form that the message names.");

    public static readonly ProblemCode UnknownUnit = Error("R14", "unknown unit",
        "The unit behind the number is not known, or does not belong to this kind of value.",
        "Lengths: ft, us-ft, in, m, cm, mm, 5'-6\". Angles: deg. Shares: %.");

    public static readonly ProblemCode OutOfRange = Error("R15", "value out of range",
        "The value is impossible, or beyond what the program takes.",
        "Give a value within the range that the message names.");

    public static readonly ProblemCode UnknownChoice = Error("R16", "not one of the choices",
        "The value is not in the list of values that the key takes.",
        "Take one of the values that the message names.");

    public static readonly ProblemCode WrongCount = Error("R17", "too few or too many values",
        "A list has fewer or more values than its key takes.",
        "Give as many values as the message names.");

    public static readonly ProblemCode BadStation = Error("R18", "not a station",
        "A station is a plain number or has the form 12+34.56 (feet: two digits behind the plus) or 1+234.56 (metres: three digits).",
        "Write the station in one of these forms, without a unit.");

    public static readonly ProblemCode ExactlyOne = Error("R19", "one of several keys",
        "Of a group of keys exactly one must be given.",
        "Keep one of them.");

    // R20 to R29: names and points
    public static readonly ProblemCode DuplicateName = Error("R20", "name used twice",
        "Two walls, layout lines, obstructions, borings, openings or sections of a wall have the same name, or names that differ in upper and lower case only.",
        "Rename one of them.");

    public static readonly ProblemCode UnknownName = Error("R21", "name not found",
        "A wall, layout line, section or obstruction that is named does not exist.",
        "Correct the name, or add what it names.");

    public static readonly ProblemCode NameNeeded = Error("R22", "name needed",
        "There are several layout lines or walls, and the file does not say which is meant.",
        "Add layout_line: or wall:.");

    public static readonly ProblemCode PointForm = Error("R23", "form of a point",
        "A point is {station, offset} or {northing, easting}, not a mixture and not half of one.",
        "Give one full pair.");

    public static readonly ProblemCode OffsetSide = Error("R24", "side of an offset unknown",
        "An offset is positive into the retained side. Walls on this layout line retain different sides, or there is none, so that a bare offset has no side.",
        "Name the wall in the point (wall:), or give northing and easting.");

    public static readonly ProblemCode NotHere = Error("R25", "value that does not apply",
        "A key is given that has no effect together with the others.",
        "Remove it, or give the key that it belongs to.");

    // R30 to R49: walls
    public static readonly ProblemCode StationOffLine = Error("R30", "station out of the layout line",
        "A wall, or a place of a wall, lies before the start or beyond the end of its layout line. Only obstructions and borings may.",
        "Correct the station, or lengthen the layout line.");

    public static readonly ProblemCode StationOrder = Error("R31", "stations out of order",
        "Stations must grow along a list, and the first of two must be the smaller.",
        "Put the stations in order.");

    public static readonly ProblemCode ProfileShort = Error("R32", "profile does not reach the wall's ends",
        "The profile starts behind the wall's first station or ends before its last.",
        "Add points, so that the profile covers the whole wall.");

    public static readonly ProblemCode TopBelowBottom = Error("R33", "top below bottom",
        "At the station named the top of wall lies below the bottom of wall.",
        "Correct the elevations of top or bottom.");

    public static readonly ProblemCode SectionGap = Error("R34", "sections leave a gap",
        "A stretch of the wall belongs to no section.",
        "Let each section start where the one before ends, from the wall's first station to its last.");

    public static readonly ProblemCode SectionOverlap = Error("R35", "sections overlap",
        "A stretch of the wall belongs to two sections.",
        "Let each section start where the one before ends.");

    public static readonly ProblemCode OutsideWall = Error("R36", "station out of the wall",
        "A section, step, opening, panel break, pinned nail or closed stretch reaches beyond the wall's stations.",
        "Correct the station, or the wall's stations.");

    public static readonly ProblemCode StepOffBreak = Warning("R37", "bottom step not at a panel break",
        "The bottom of wall steps between two panel breaks, so that a panel would stand on two levels.",
        "Move the step to the nearest panel break, or let from_grade make the steps.");

    public static readonly ProblemCode FromGradeNeeds = Error("R38", "from_grade needs more",
        "Steps made from the finished grade need finished_grade and panels.",
        "Add the missing block, or give the steps.");

    public static readonly ProblemCode FaceVanishes = Error("R39", "no face left",
        "With the face offset and batter the face of an arc lies at or beyond its centre, or the mitres of the corners leave nothing of a leg.",
        "Correct face_offset, batter, radius or the length between the corners.");

    public static readonly ProblemCode GradeBelowBottom = Warning("R40", "finished grade out of the wall's height",
        "The finished grade lies below the bottom of wall or above its top.",
        "Check the elevations of finished_grade, bottom and top.");

    public static readonly ProblemCode LimitBesideCorner = Warning("R42", "section limit beside a corner",
        "A section ends a little before or behind a corner, so that a sliver of the face has a grid of its own and its nails crowd round the corner.",
        "Let the section end at the corner's station.");

    public static readonly ProblemCode FacesOther = Error("R43", "the wall faces the other way",
        "The face, as retained_side and the layout line give it, does not look where faces says.",
        "Correct retained_side, the azimuth, or faces.");

    public static readonly ProblemCode TooManyNails = Error("R41", "too many nails",
        "The sections' grids ask for more nails than the program takes (2,000,000).",
        "Check the spacings and the elevations for a slip of the decimal point; split a very long job into several files.");

    public static readonly ProblemCode WallHigh = Warning("R44", "very high wall",
        "The wall is higher than soil nail walls usually are: 60 ft (18 m). Often a digit of an elevation slipped.",
        "Check the elevation that the message names; if it is meant, nothing needs to be done.");

    public static readonly ProblemCode ElevationJump = Warning("R45", "jump of an elevation",
        "A profile rises or falls, steeper than 45 degrees or in a step, by more than half of the wall's usual height.",
        "Check the elevation; if it is meant, nothing needs to be done.");

    public static readonly ProblemCode WallTooHigh = Error("R46", "wall too high",
        "The wall is over 300 ft (90 m) high, more than this program lays out. Nearly always the decimal point of an elevation slipped.",
        "Correct the elevation that the message names.");

    public static readonly ProblemCode VerticalCurve = Error("R47", "vertical curve does not fit",
        "A vertical curve runs into its neighbour, stands at an end of the profile or at a step.",
        "Shorten the curve, or correct the points.");

    // R50 to R59: obstructions, openings, borings
    public static readonly ProblemCode TopUnderBottom = Error("R50", "top not above bottom",
        "The top of an obstruction, opening, boring or layer is not above its bottom.",
        "Correct or swap the two elevations.");

    public static readonly ProblemCode FootprintCrosses = Error("R51", "footprint crosses itself",
        "Two sides of the footprint cross or touch, or it has no area.",
        "Give the corners in order around the footprint, each once.");

    public static readonly ProblemCode NoLength = Error("R52", "points fall together",
        "Two neighbouring points are the same, so that the piece between them has no length.",
        "Correct or remove one of the two.");

    public static readonly ProblemCode PipeBore = Error("R53", "bore of a pipe",
        "The bore must be given where the elevation is the invert, and cannot be larger than the outside diameter.",
        "Give bore: (inside diameter), smaller than diameter:.");

    public static readonly ProblemCode LayerOrder = Error("R54", "layers of a boring out of order",
        "The layers of a boring go down: each ends below the one before, none below the boring's bottom.",
        "Put the layers in order from the top.");

    public static readonly ProblemCode CrossSectionPoints = Error("R55", "points of a cross section out of order",
        "The points of a cross section start at the face (0) and go away from it.",
        "Start with [0, elevation] and put the points in order of their distance.");

    public static readonly ProblemCode InFront = Warning("R56", "obstruction in front of the face",
        "The obstruction lies wholly on the air side of the face, where no hole goes.",
        "Check the sign of its offset (positive into the retained side), its coordinates, and the wall's retained_side.");

    public static readonly ProblemCode FarAway = Warning("R57", "obstruction far from every wall",
        "The obstruction lies so far from every wall that no hole can meet it.",
        "Check its coordinates: northing and easting may be swapped, or belong to another system.");

    public static readonly ProblemCode AcrossBend = Warning("R58", "straight line across a bend",
        "Between two points of an obstruction the layout line bends, so that the straight line between them does not keep the offset that both have.",
        "Let it follow the layout line with offset_line, or give more points; if it is straight, nothing needs to be done.");

    public static readonly ProblemCode PipeThroughFace = Warning("R59", "pipe meets the face",
        "The pipe meets the face between top and bottom of wall, where there is no opening.",
        "Add an opening under openings, or correct the pipe's points.");

    // R60 to R79: grid and rules
    public static readonly ProblemCode HoleTooSmall = Error("R60", "hole not larger than the bar",
        "The bar does not go into the hole.",
        "Correct the hole's diameter or the bar's size.");

    public static readonly ProblemCode SpacingUnderGap = Error("R61", "spacing under min_gap",
        "The grid's horizontal spacing is less than the least gap that the rules allow.",
        "Correct horizontal_spacing or rules: min_gap.");

    public static readonly ProblemCode MaximumUnderTolerance = Error("R62", "redirect limits contradict",
        "redirect: maximum is under field_tolerance, or the step is larger than the maximum.",
        "Let step <= field_tolerance <= maximum.");

    public static readonly ProblemCode UnknownBar = Error("R63", "unknown bar size",
        "The bar table (ASTM A615) has no such size.",
        "Sizes: \"#3\" to \"#11\", \"#14\", \"#18\", \"#20\", in quotes.");

    public static readonly ProblemCode RangeReversed = Error("R64", "limits reversed",
        "The least value of a window is not below the greatest.",
        "Swap the two.");

    public static readonly ProblemCode InclinationWindow = Warning("R70", "grid inclination outside the window",
        "The grid's inclination lies outside redirect: inclination, so that no turned nail may keep it.",
        "Widen the window, or correct the inclination.");

    public static readonly ProblemCode TopRowDepth = Warning("R71", "depth of the first row",
        "The first row lies nearer to the top than edge_min or deeper than top_max, so that the rules move or add rows.",
        "Correct top_row_depth, or the rule.");

    public static readonly ProblemCode Unusual = Warning("R72", "value that is not usual",
        "The value can be meant, but lies far outside what such a value usually is (common practice, no source). Often the unit was forgotten: a number without one is in the project's unit.",
        "Check the value and its unit, such as 42 in; if it is meant, nothing needs to be done.");

    public static readonly ProblemCode MostlyBelowGrade = Warning("R73", "wall mostly below finished grade",
        "Less than half of the wall's height stands above the finished grade in front of it.",
        "Check that finished_grade is the ground in front at the foot of the wall, and not the ground behind it.");

    // R90 to R93: the engineer's values
    public static readonly ProblemCode DesignMethod = Error("R90", "factors and method do not go together",
        "LRFD takes a load factor and resistance factors up to 1; ASD takes safety factors from 1 and no load factor; without a method there are no factors.",
        "State method: LRFD or method: ASD, and the factors that belong to it.");

    public static readonly ProblemCode SurfaceOrder = Error("R91", "points of a slip surface out of order",
        "The points of a slip surface go from the lowest up, no two of them alike.",
        "Give the points from the lowest up.");

    public static readonly ProblemCode BondLayer = Warning("R92", "bond strength of a layer that no boring has",
        "bond_by_layer names a soil layer that is in no boring, so that its bond strength is never used.",
        "Write the layer as the borings do.");

    public static readonly ProblemCode FactFigure = Warning("R93", "words of the design against figures",
        "A fact under design: at the top of the file names another value than the figure that the file gives for the same. The sheets print the words; quantities and ratios come from the figure.",
        "Make them agree, or take the words out: the sheets then print the figure.");

    public static readonly ProblemCode Guidance = Warning("guidance", "outside what is usual",
        "The value can be meant, but lies outside the published or customary range that the message names with its source.",
        "Check the value; if it is meant, nothing needs to be done.");

    // I01 to I09: files of other programs
    public static readonly ProblemCode OutsideFolder = Error("I01", "file outside of the project's folder",
        "A project file reads only files beside it or below its folder, so that one from elsewhere cannot reach into the machine.",
        "Copy the file beside the project file, or run with --allow-outside.");

    public static readonly ProblemCode NotThisKind = Error("I02", "file of another kind",
        "The file is not what the key reads: not LandXML, not DXF, not a table of values, or cut off. Nothing of such a file is shown.",
        "Export it again in the form that the key names.");

    public static readonly ProblemCode NotInFile = Error("I03", "not found in the file",
        "The file is readable but does not hold what is asked of it: no such alignment, profile, layer or column.",
        "Run sheetgen inspect FILE to see what it holds.");

    public static readonly ProblemCode CannotUse = Error("I04", "cannot be used as it stands",
        "What the file holds contradicts itself or has a form that is not read, so that using it would be a guess.",
        "Mend it in the program that wrote it, or type it.");

    public static readonly ProblemCode LeftOut = Warning("I05", "left out of a file",
        "A thing that was asked for could not be used. It is not among the obstructions, so that no clearance to it is checked.",
        "Draw it as a closed shape, circle or line with elevations, or type it; or leave it to another layer.");

    public static readonly ProblemCode Inexact = Warning("I06", "file does not agree with itself",
        "Figures of the file differ by more than its digits explain. The message says which were taken.",
        "Compare with the program that wrote it.");

    public static readonly ProblemCode Imported = new("I07", Severity.Notice, "taken from a file",
        "Tells what was taken from a file of another program, and where it lies.",
        "Look it over once; nothing needs to be done.");

    public static readonly ProblemCode PayItem = Error("Q01", "faulty pay item",
        "A pay item names a quantity that does not exist, has a faulty expression, or has the number of another. Other faults of a pay item file have the codes above.",
        "Compare it with a set in templates/pay-items; the workbook's sheet \"Quantities\" lists the names.");

    public static readonly ProblemCode PayUnit = Warning("Q02", "unit of a pay item not known",
        "The program does not know the unit of measure, so that it cannot say whether it fits the quantity.",
        "Compare the unit with the quantity yourself, or write a unit that the message names.");

    /// <summary>Codes of the files that a project file names. The stages that read those files report them.</summary>
    public static IReadOnlyList<ProblemCode> OfNamedFiles { get; } =
    [
        PayItem, PayUnit,
        Error("T01", "not a complete layer list",
            "The file under sheets: layers is not JSON of the form of templates/layers, lacks a layer, or holds what a drawing cannot: a colour, line weight, line type or name outside the DXF format.",
            "Start from a copy of a list in templates/layers."),
        Error("T02", "not a title block drawing",
            "The file under sheets: title_block is not an ASCII DXF drawing, or draws nothing.",
            "Save the title block as ASCII DXF, drawn at paper size in model space or as a block with attributes."),
        Warning("T03", "part of the title block is not shown",
            "The drawing holds something that its reader leaves out or changes, that a title block does not show, or a text of a size that no one can have meant.",
            "Look whether the sheets miss it; if so, draw it with lines, arcs, fills and texts."),
        Error("T04", "not a note set",
            "The file under sheets: notes is not JSON of the form of templates/notes, or holds what the sheets cannot show.",
            "Start from a copy of a set in templates/notes."),
        Error("T05", "not a complete language",
            "The file under sheets: language is not JSON of the form of templates/text, lacks a text, or holds what the sheets cannot show.",
            "Start from a copy of a language in templates/text."),
        Error("D01", "not a drawing of this project",
            "The drawing that recheck is given cannot be read as DXF, holds no nail, or none of its nails stands where the project has one.",
            "Open it in the drawing program, save it as DXF once more, and name the project that it was made from."),
        Error("D02", "a fault in an as-built record",
            "A cell of the record is no number, out of range, or names a nail that the project does not have; or a column is missing or there twice.",
            "Correct the cell; \"sheetgen asbuilt FILE --out DIR\" writes an empty record."),
        Error("D03", "not results to compare",
            "A file or folder that compare is given is neither a project file nor nails.csv nor a folder of results, or a line of it cannot be read.",
            "Name a project file, a nails.csv, or the folder of a build."),
    ];

    public static readonly ProblemCode BadSetName = Error("L01", "name that cannot be a folder's",
        "Each wall of a corridor gets a folder of its own with its name, on every system.",
        "Use letters, digits, blanks, - and _, and no name that a system keeps for a device.");

    public static readonly ProblemCode StudyKey = Error("L02", "not a key that a study can vary",
        "A study names keys of the project file; the key is unknown, ambiguous, a block of keys, or stands in no place of this project file.",
        "docs/project-file.md lists the keys; write the blocks that it stands in before it, such as rules.clearance.nail.");

    public static readonly ProblemCode StudyValues = Error("L03", "values that a study cannot take",
        "A key of a study takes a list of values, or a range {from, to, step} of numbers that ends; all keys together may not give more variants than the limit.",
        "Write [3.5, 4, 4.5] or {from: 10, to: 20, step: 5}.");

    /// <summary>Codes of corridor lists and studies, beside those of project files.</summary>
    public static IReadOnlyList<ProblemCode> OfLists { get; } = [BadSetName, StudyKey, StudyValues];

    /// <summary>All codes of project files, in order.</summary>
    public static IReadOnlyList<ProblemCode> All { get; } =
    [
        CannotRead, Syntax, NotUsed, TooLarge, DuplicateKey, FormFile, FormCell, FormSheetPassed,
        UnknownKey, MissingKey, EmptyValue, WrongType, UnknownUnit, OutOfRange, UnknownChoice, WrongCount, BadStation, ExactlyOne,
        DuplicateName, UnknownName, NameNeeded, PointForm, OffsetSide, NotHere,
        StationOffLine, StationOrder, ProfileShort, TopBelowBottom, SectionGap, SectionOverlap, OutsideWall, StepOffBreak,
        FromGradeNeeds, FaceVanishes, GradeBelowBottom, TooManyNails, WallHigh, ElevationJump, WallTooHigh, VerticalCurve, LimitBesideCorner, FacesOther,
        TopUnderBottom, FootprintCrosses, NoLength, PipeBore, LayerOrder, CrossSectionPoints,
        InFront, FarAway, AcrossBend, PipeThroughFace,
        HoleTooSmall, SpacingUnderGap, MaximumUnderTolerance, UnknownBar, RangeReversed, InclinationWindow, TopRowDepth,
        Unusual, MostlyBelowGrade, DesignMethod, SurfaceOrder, BondLayer, FactFigure, Guidance,
        OutsideFolder, NotThisKind, NotInFile, CannotUse, LeftOut, Inexact, Imported,
    ];

    private static ProblemCode Error(string code, string title, string meaning, string remedy) =>
        new(code, Severity.Error, title, meaning, remedy);

    private static ProblemCode Warning(string code, string title, string meaning, string remedy) =>
        new(code, Severity.Warning, title, meaning, remedy);
}
