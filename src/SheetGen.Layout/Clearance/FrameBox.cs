namespace SheetGen.Layout.Clearance;

/// <summary>A box in the frame of a group of holes.</summary>
internal readonly record struct FrameBox(float XLow, float XHigh, float YLow, float YHigh, float ZLow, float ZHigh)
{
    public FrameBox Grow(float by) => new(XLow - by, XHigh + by, YLow - by, YHigh + by, ZLow - by, ZHigh + by);

    public FrameBox With(in FrameBox o) => new(
        Math.Min(XLow, o.XLow), Math.Max(XHigh, o.XHigh), Math.Min(YLow, o.YLow), Math.Max(YHigh, o.YHigh),
        Math.Min(ZLow, o.ZLow), Math.Max(ZHigh, o.ZHigh));

    public bool Meets(in FrameBox o) =>
        XLow <= o.XHigh && o.XLow <= XHigh && YLow <= o.YHigh && o.YLow <= YHigh && ZLow <= o.ZHigh && o.ZLow <= ZHigh;
}
