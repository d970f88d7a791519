using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>Everything that is sawn in one board, in a suggested order; coordinates are those of <see cref="BoardFrame"/>.</summary>
/// <param name="Lanes">Those of the board, or one as wide as it where it is not ripped.</param>
/// <param name="Cuts">In the order in which they are best made.</param>
/// <param name="Places">Where each piece begins and ends, lane by lane from the beginning.</param>
public sealed record BoardCutList(
    SawnBoard Board,
    BoardFrame Frame,
    ImmutableArray<SawnLane> Lanes,
    ImmutableArray<SawCut> Cuts,
    ImmutableArray<PiecePlace> Places,
    ImmutableArray<CutOut> CutOuts
)
{
    /// <summary>What the saw and the offcuts are taken to be.</summary>
    public required NestSpec Spec { get; init; }

    /// <summary>Where each lane begins when it is sawn: at the board's own beginning, or where an empty end is sawn off before it.</summary>
    public required ImmutableArray<double> LaneBeginsMm { get; init; }

    /// <summary>Where each of them ends, likewise.</summary>
    public required ImmutableArray<double> LaneEndsMm { get; init; }

    /// <summary>Where the longest of them ends.</summary>
    public double LanesEndMm => LaneEndsMm.Max();

    /// <summary>How often the saw is set for the cuts across, one after the other.</summary>
    public int Settings => SawSettings.Count(Cuts);
}
