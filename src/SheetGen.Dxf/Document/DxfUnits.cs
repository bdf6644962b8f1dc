namespace SheetGen.Dxf;

/// <summary>The unit of model space, as the code of <c>$INSUNITS</c>.</summary>
public enum DxfUnits
{
    Unitless = 0,
    Inch = 1,
    Foot = 2,
    Millimetre = 4,
    Centimetre = 5,
    Metre = 6,
    UsSurveyFoot = 21,
}
