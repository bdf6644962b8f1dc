using SheetGen.Model.Geometry;

namespace SheetGen.Model.Results;

/// <summary>A placed nail. Station, elevation, angles and length are rounded once, here; everything later uses them as they are.</summary>
public sealed record Nail
{
    /// <summary>Unique in the project and stable: section, row and grid column (A-3-07).</summary>
    public required string Mark { get; init; }

    public required Wall Wall { get; init; }

    public required Section Section { get; init; }

    public required RowNumber Row { get; init; }

    /// <summary>Grid column in the row, from 1; the column that an added nail stands next to.</summary>
    public required int Column { get; init; }

    public required NailKind Kind { get; init; }

    /// <summary>Distance along the layout line.</summary>
    public required double Along { get; init; }

    /// <summary>Printed station, rounded to the quantum.</summary>
    public required double Station { get; init; }

    /// <summary>Elevation of the head, rounded to the quantum.</summary>
    public required double Elevation { get; init; }

    /// <summary>Degrees, positive up-station.</summary>
    public required double Splay { get; init; }

    /// <summary>Degrees below horizontal.</summary>
    public required double Inclination { get; init; }

    /// <summary>Length from the face to the back of the hole.</summary>
    public required double Length { get; init; }

    public required NailStatus Status { get; init; }

    /// <summary>True where the head is off its grid station.</summary>
    public bool IsMoved { get; init; }

    /// <summary>True for a nail that stands for no grid station.</summary>
    public bool IsAdded { get; init; }

    /// <summary>True where the designer pinned it.</summary>
    public bool IsFixed { get; init; }

    /// <summary>Grid station that it stands for (printed); its own station for an added nail.</summary>
    public required double GridStation { get; init; }

    /// <summary>The drilled hole, drift included.</summary>
    public required Hole Hole { get; init; }

    /// <summary>Null for a nail at its grid place in the grid's direction.</summary>
    public NailReason? Reason { get; init; }

    public Bar Bar => Section.Bar;

    public double HoleDiameter => Section.HoleDiameter;
}
