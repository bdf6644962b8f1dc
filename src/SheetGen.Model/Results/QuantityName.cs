namespace SheetGen.Model.Results;

/// <summary>Names of the measured quantities; pay item expressions use them.</summary>
public static class QuantityName
{
    public const string NailCount = "nail_count";
    public const string UnresolvedCount = "unresolved_count";
    public const string PayLength = "pay_length";
    public const string UnresolvedLength = "unresolved_length";
    public const string FaceLength = "face_length";
    public const string BackLength = "back_length";
    public const string Projection = "projection_length";
    public const string BarLength = "bar_length";
    public const string BarWeight = "bar_weight";
    public const string HoleLength = "hole_length";
    public const string HoleVolume = "hole_volume";
    public const string GroutVolume = "grout_volume";
    public const string GroutWithOverrun = "grout_with_overrun";
    public const string Plates = "plates";
    public const string Nuts = "nuts";
    public const string Washers = "bevelled_washers";
    public const string Centralizers = "centralizers";
    public const string VerificationCount = "verification_count";
    public const string VerificationLength = "verification_length";
    public const string VerificationBarLength = "verification_bar_length";
    public const string VerificationBarWeight = "verification_bar_weight";
    public const string VerificationGrout = "verification_grout";
    public const string ProofCount = "proof_count";
    public const string FaceAreaGross = "face_area_gross";
    public const string OpeningArea = "opening_area";
    public const string FaceArea = "face_area";
    public const string ExposedArea = "exposed_area";
    public const string ElevationArea = "elevation_area";
    public const string PanelFaceArea = "panel_face_area";
    public const string ShotcreteVolume = "shotcrete_volume";
    public const string ShotcreteSupplied = "shotcrete_supplied";
    public const string MeshArea = "mesh_area";
    public const string WalerLength = "waler_length";
    public const string CopingLength = "coping_length";
    public const string PanelCount = "panel_count";
    public const string PanelsFull = "panels_full";
    public const string PanelsPartial = "panels_partial";
    public const string PanelsSpecial = "panels_special";
    public const string PadLength = "pad_length";
    public const string PadSteps = "pad_steps";
    public const string StripCount = "strip_count";
    public const string StripLength = "strip_length";
    public const string LiftCount = "lift_count";
    public const string ExcavationVolume = "excavation_volume";
}
