using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Exchange;

/// <summary>The finished results that every open format is made from; nothing is computed anew.</summary>
public sealed record ExchangeInput(WallProject Project, NailLayout Layout, ClearanceReport Report, QuantityTable Quantities, RunInfo Run);

/// <summary>A file made for others.</summary>
public sealed record ExchangeFile(string Name, byte[] Content);
