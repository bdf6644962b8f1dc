namespace SheetGen.Model.Results;

/// <summary>One precast panel, as it is counted, paid and drawn.</summary>
public sealed record Panel
{
    /// <summary>Mark of its kind: panels of one mark are cast alike.</summary>
    public string Mark { get; init; } = "";

    public required Wall Wall { get; init; }

    public required Section Section { get; init; }

    /// <summary>Index of the leg of the wall's face.</summary>
    public required int Leg { get; init; }

    /// <summary>Column from 1 on its leg, up-station.</summary>
    public required int Column { get; init; }

    /// <summary>Course from 1, counted up from the wall's lowest bottom.</summary>
    public required int Course { get; init; }

    public required PanelSize Size { get; init; }

    /// <summary>Width along the panel's own plumb face.</summary>
    public required double Width { get; init; }

    /// <summary>Height at the down-station edge.</summary>
    public required double StartHeight { get; init; }

    /// <summary>Height at the up-station edge; differs below a sloping top.</summary>
    public required double EndHeight { get; init; }

    /// <summary>Area on its own face, openings deducted.</summary>
    public required double Area { get; init; }

    /// <summary>Names of the openings that cut it.</summary>
    public required IReadOnlyList<string> CutBy { get; init; }

    /// <summary>Distance along the layout line of its down-station edge; beyond the leg's end where the mitre is.</summary>
    public required double Start { get; init; }

    public required double End { get; init; }

    /// <summary>Its outline as closed rings of (along the layout line, elevation), openings as rings of their own.</summary>
    public required IReadOnlyList<IReadOnlyList<ProfilePoint>> Outline { get; init; }
}
