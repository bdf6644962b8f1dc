namespace SheetGen.Model.Corridors;

/// <summary>How the building of one project file of a corridor ended.</summary>
public enum WallOutcome
{
    /// <summary>Its set is written.</summary>
    Built,

    /// <summary>Its input is wrong.</summary>
    Faulty,

    /// <summary>Its project file cannot be read.</summary>
    Missing,

    /// <summary>Its folder could not be written.</summary>
    NotWritten,

    /// <summary>The program is at fault.</summary>
    ProgramFault,

    /// <summary>No run has come to it.</summary>
    NotBuilt,

    /// <summary>Its set stands for an earlier input, program or option.</summary>
    OutOfDate,
}

/// <summary>What is kept of one project file of a corridor: everything that the register and the next run need, without a clock in it.</summary>
public sealed record WallState
{
    /// <summary>Version of the form.</summary>
    public int Format { get; init; } = 1;

    public required string Name { get; init; }

    public required WallOutcome Outcome { get; init; }

    /// <summary>Exit code of a single build.</summary>
    public required int Exit { get; init; }

    /// <summary>The program's version.</summary>
    public required string Version { get; init; }

    /// <summary>Fingerprint of the program's own code: two programs with the same one give the same set.</summary>
    public required string Program { get; init; }

    /// <summary>Options of the build in one text.</summary>
    public required string Options { get; init; }

    /// <summary>Every file that was read: the project file and those that it names, from the list's folder.</summary>
    public IReadOnlyList<FileHash> Inputs { get; init; } = [];

    /// <summary>The files written.</summary>
    public IReadOnlyList<FileHash> Files { get; init; } = [];

    /// <summary>Problems of the input, a line each.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];

    /// <summary>What was built; null where nothing was.</summary>
    public WallFigures? Figures { get; init; }

    /// <summary>Least northing and easting, then greatest, of all that the project file holds (holes, faces, obstructions); empty where nothing was built.</summary>
    public IReadOnlyList<double> Reach { get; init; } = [];

    /// <summary>The holes, for the check against neighbours.</summary>
    public IReadOnlyList<KeptHole> Holes { get; init; } = [];
}

/// <summary>A file with its content's fingerprint.</summary>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hex.</param>
public sealed record FileHash(string Name, long Bytes, string Sha256);

/// <summary>A nail's hole in the coordinates of the project file (its origin added back), lengths in its unit.</summary>
/// <param name="Figures">Northing, easting, elevation of the head; the unit vector into the ground in the same order; length, radius at the head, drift.</param>
public sealed record KeptHole(string Mark, string Wall, double Station, double Elevation, IReadOnlyList<double> Figures);

/// <summary>The figures of a built set that the register shows.</summary>
public sealed record WallFigures
{
    public required string Title { get; init; }

    public required string Number { get; init; }

    public required string Units { get; init; }

    public required string Revision { get; init; }

    public required string Date { get; init; }

    /// <summary>SHA-256 of the project file.</summary>
    public required string InputHash { get; init; }

    /// <summary>Coordinate zone as the project states it; empty where it does not.</summary>
    public required string Zone { get; init; }

    /// <summary>Names of the walls in the project file.</summary>
    public required IReadOnlyList<string> Walls { get; init; }

    /// <summary>Production nails by status (grid, moved, redirected, noted, unresolved).</summary>
    public required IReadOnlyDictionary<string, int> Statuses { get; init; }

    public required int Production { get; init; }

    public required int Verification { get; init; }

    public required int Proof { get; init; }

    public required int LeftOut { get; init; }

    /// <summary>Length of the production nails from head to tip.</summary>
    public required double NailLength { get; init; }

    /// <summary>Findings by severity (error, warning, notice, accepted).</summary>
    public required IReadOnlyDictionary<string, int> Findings { get; init; }

    /// <summary>Cover, unresolved, noted and effort in this order: found, and proven least or null.</summary>
    public required IReadOnlyList<KeptScore> Score { get; init; }

    public required bool IsProvenBest { get; init; }

    /// <summary>Least clear distance of any nail; null where no hole has anything near it.</summary>
    public double? LeastClear { get; init; }

    /// <summary>Main quantities by name, with amounts in the project's units; null where one is not whole or not asked for.</summary>
    public required IReadOnlyList<KeptQuantity> Quantities { get; init; }

    public required string PayItems { get; init; }

    public required IReadOnlyList<KeptBidItem> Bid { get; init; }

    public required IReadOnlyList<KeptSheet> Sheets { get; init; }
}

/// <param name="Name">cover, unresolved, noted or effort.</param>
public sealed record KeptScore(string Name, double Found, double? Bound);

/// <param name="State">complete, incomplete, missing or not asked.</param>
public sealed record KeptQuantity(string Name, string Description, string Unit, double? Amount, string State);

/// <param name="Quantity">Rounded by the item's rule; null where it has none.</param>
/// <param name="Raw">Unrounded.</param>
/// <param name="Decimals">Decimals of the rounded quantity.</param>
/// <param name="State">complete, incomplete, missing or not asked.</param>
/// <param name="Note">What is missing where.</param>
public sealed record KeptBidItem(string Number, string Description, string Unit, double? Quantity, double? Raw, int Decimals, double? Price, string State, string Note);

/// <summary>A sheet of the set; pages of sheets.pdf stand in this order.</summary>
public sealed record KeptSheet(string Name, string Title, string Size);
