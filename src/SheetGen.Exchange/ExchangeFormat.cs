using SheetGen.Exchange.Bcf;
using SheetGen.Exchange.GeoJson;
using SheetGen.Exchange.Gltf;
using SheetGen.Exchange.Ifc;
using SheetGen.Exchange.LandXml;
using SheetGen.Exchange.Shape;
using SheetGen.Exchange.StakeOut;

namespace SheetGen.Exchange;

/// <summary>An open format that a build can also write.</summary>
/// <param name="Word">What it is asked for with.</param>
/// <param name="FileNames">Every file that it makes, in order.</param>
/// <param name="Content">What it holds, in a few words.</param>
/// <param name="Make">Makes the contents of the files, in the order of their names. The same input gives the same bytes.</param>
public sealed record ExchangeFormat(
    string Word, IReadOnlyList<string> FileNames, string Content, Func<ExchangeInput, IReadOnlyList<byte[]>> Make)
{
    /// <summary>All formats, in the order in which they are listed.</summary>
    public static IReadOnlyList<ExchangeFormat> All { get; } =
    [
        new("stakeout", [StakeOutCsv.FileName], "points, directions and lengths to set out", i => [StakeOutCsv.Make(i)]),
        new("landxml", [LandXmlFile.FileName], "LandXML 1.2: heads and tips as points, alignments, profiles", i => [LandXmlFile.Make(i)]),
        new("geojson", [GeoJsonFile.FileName], "GeoJSON: heads and traces with their figures", i => [GeoJsonFile.Make(i)]),
        new("shape", ShapeFiles.FileNames, "shapefiles: heads and traces with their figures", ShapeFiles.Make),
        new("ifc", [IfcFile.FileName], "IFC 4.3: nails, facing, obstructions and alignments with properties and quantities", i => [IfcFile.Make(i)]),
        new("bcf", [BcfFile.FileName], "BCF 3.0: the findings with camera and components", i => [BcfFile.Make(i)]),
        new("gltf", [GltfFile.FileName], "glTF 2.0: the whole as a 3D picture", i => [GltfFile.Make(i)]),
    ];

    /// <summary>The names of every file of every format.</summary>
    public static IReadOnlyList<string> AllFileNames { get; } = [.. All.SelectMany(f => f.FileNames)];

    /// <summary>The files of this format, named.</summary>
    public IEnumerable<ExchangeFile> Files(ExchangeInput input) => FileNames.Zip(Make(input), (name, content) => new ExchangeFile(name, content));
}
