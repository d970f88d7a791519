using System.Collections.Immutable;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Tiling;
using PlankFit.Planking.Whole;

namespace PlankFit.Export;

/// <summary>What the job asks of its files, as those who write them know it.</summary>
public static class OutputAsked
{
    public static DxfOptions Dxf(OutputSpec output, DxfVersion version) =>
        new(version, output.DxfUnits == DxfUnits.Inches ? DxfUnit.Inch : DxfUnit.Millimetre);

    /// <summary>The versions asked for, the first of them that of dxf/ itself.</summary>
    public static ImmutableArray<DxfVersion> Versions(OutputSpec output) =>
        output.Dxf switch
        {
            DxfAsked.R12 => [DxfVersion.R12],
            DxfAsked.Both => [DxfVersion.R2000, DxfVersion.R12],
            _ => [DxfVersion.R2000],
        };

    public static Paper Paper(OutputSpec output) =>
        output.Paper switch
        {
            PaperSize.A3 => Draughting.Tiling.Paper.A3,
            PaperSize.Letter => Draughting.Tiling.Paper.Letter,
            _ => Draughting.Tiling.Paper.A4,
        };
}
