using SheetGen.Dxf;
using Xunit;

namespace SheetGen.Tests.Dxf;

public class DocumentCheckTests
{
    public static TheoryData<string, Action<DxfDocument>> Faults => new()
    {
        { "header: layer X is not defined", d => d.Header = d.Header with { Layer = "X" } },
        { "header: dimension style X is not defined", d => d.Header = d.Header with { DimStyle = "X" } },
        { "layer 'A|B': not a name that the format allows", d => d.Layers.Add(new("A|B")) },
        { "layer A: the colour must be 1 to 255", d => d.Layers.Add(new("A", 256)) },
        { "layer A: linetype Wavy is not defined", d => d.Layers.Add(new("A") { Linetype = "Wavy" }) },
        { "layer A: 17 is not a lineweight of the format", d => d.Layers.Add(new("A") { LineWeight = 17 }) },
        { "linetype W: a pattern has two or more lengths, or none", d => d.Linetypes.Add(new("W", "", [1])) },
        { "linetype Continuous: this name is built in", d => d.Linetypes.Add(new("Continuous", "", [1, -1])) },
        { "dimension style D: text style X is not defined", d => d.DimStyles.Add(new("D") { TextStyle = "X" }) },
        { "block B: a dimension may not stand in a block", d => d.Blocks.Add(new("B") { Entities = { DxfDimension.Aligned("0", new(0, 0), new(1, 0), 1) } }) },
        { "block B: it contains itself", d => d.Blocks.Add(new("B") { Entities = { new DxfInsert("0", "B", new(0, 0)) } }) },
        { "block *D7: this name is kept for spaces and dimensions", d => d.Blocks.Add(new("*D7")) },
        { "layout Model: this name is kept for model space", d => d.Layouts.Add(new("Model", 100, 100)) },
        { "layout S: the paper must be larger than 0", d => d.Layouts.Add(new("S", 0, 100)) },
        { "layout S, viewport 1: frozen layer X is not defined", d => d.Layouts.Add(new("S", 9, 9) { Viewports = { DxfViewport.AtScale("0", new(0, 0), 1, 1, new(0, 0), 1) with { FrozenLayers = ["X"] } } }) },
        { "layout S, viewport 1: its sizes must be above 0", d => d.Layouts.Add(new("S", 9, 9) { Viewports = { DxfViewport.AtScale("0", new(0, 0), 1, 1, new(0, 0), 0) } }) },
        { "model space, entity 1 (DxfLine): layer X is not defined", d => d.Model.Add(new DxfLine("X", new(0, 0), new(1, 1))) },
        { "model space, entity 1 (DxfLine): a coordinate or angle is not a number below 1e15", d => d.Model.Add(new DxfLine("0", new(0, double.NaN), new(1, 1))) },
        { "model space, entity 1 (DxfCircle): the radius must be above 0", d => d.Model.Add(new DxfCircle("0", new(0, 0), 0)) },
        { "model space, entity 1 (DxfPolyline): two or more corners are needed", d => d.Model.Add(new DxfPolyline("0", [new DxfPoint(1, 1)])) },
        { "model space, entity 1 (DxfInsert): block X is not defined", d => d.Model.Add(new DxfInsert("0", "X", new(0, 0))) },
        { "model space, entity 1 (DxfText): text style X is not defined", d => d.Model.Add(new DxfText("0", new(0, 0), 1, "") { Style = "X" }) },
        { "model space, entity 1 (DxfAttributeDefinition): 'A B' is not a tag: it is empty or has spaces", d => d.Model.Add(new DxfAttributeDefinition("A B", "", new("0", new(0, 0), 1, ""))) },
        { "model space, entity 1 (DxfHatch): there is no boundary", d => d.Model.Add(new DxfHatch("0", [])) },
        { "model space, entity 1 (DxfDimension): an aligned dimension needs two points and no angle", d => d.Model.Add(new DxfDimension("0", DxfDimensionKind.Aligned, new(1, 1), new(1, 1), new(2, 2))) },
        { "model space, entity 1 (DxfLeader): two or more points are needed", d => d.Model.Add(new DxfLeader("0", [new(1, 1)])) },
        { "model space, entity 1 (DxfPointEntity): application X is not defined", d => d.Model.Add(new DxfPointEntity("0", new(1, 1)) { XData = [new("X", [])] }) },
        { "model space, entity 1 (DxfPointEntity): text of extended data is longer than 255", d => d.Model.Add(new DxfPointEntity("0", new(1, 1)) { XData = [new("ACAD", [new DxfXValue.Text(new('x', 256))])] }) },
    };

    [Theory(DisableDiscoveryEnumeration = true)]
    [MemberData(nameof(Faults))]
    public void A_fault_is_named_and_not_written(string message, Action<DxfDocument> spoil)
    {
        var document = new DxfDocument();
        spoil(document);

        Assert.Equal([new DxfProblem(0, message)], DxfDocumentCheck.Problems(document));
        var thrown = Assert.Throws<ArgumentException>(() => SampleDocument.Write(document));
        Assert.Contains(message, thrown.Message);
    }

    [Fact]
    public void All_faults_are_found_at_once()
    {
        var document = SampleDocument.WithEntities(new DxfLine("X", new(0, 0), new(1, 1)), new DxfCircle("Y", new(0, 0), -1));

        Assert.Equal(3, DxfDocumentCheck.Problems(document).Count);
    }

    [Fact]
    public void Names_differ_by_more_than_case()
    {
        var document = new DxfDocument();
        document.Layers.Add(new("Wall"));

        Assert.Throws<ArgumentException>(() => document.Layers.Add(new("WALL")));
        document.Model.Add(new DxfPointEntity("wALL", new(0, 0)));
        Assert.Empty(DxfDocumentCheck.Problems(document));
    }
}
