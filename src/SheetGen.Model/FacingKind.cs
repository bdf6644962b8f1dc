namespace SheetGen.Model;

/// <summary>What the permanent facing is made of.</summary>
public enum FacingKind
{
    None,
    PrecastPanels,
    CastInPlace,
    PermanentShotcrete,
    SculptedShotcrete,
    Other,
}
