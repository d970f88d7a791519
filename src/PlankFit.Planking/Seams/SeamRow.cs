using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Seams;

/// <summary>The seams of one layer from forward to aft; plank k lies between seam k − 1 and seam k. Master is the plank's index, from 0 at the forward corner.</summary>
/// <param name="Tapered">Indices of planks that were tapered to bring the angle back.</param>
internal sealed record SeamRow(
    ImmutableArray<Seam> Seams,
    int Master,
    ImmutableHashSet<int> Tapered,
    double ShiftMm
)
{
    /// <summary>The number of the first plank: 1, unless planks that are fitted already hold the numbers of an earlier count.</summary>
    public int FirstNumber { get; init; } = 1;

    /// <summary>Indices of planks both of whose seams lie where they were measured.</summary>
    public ImmutableHashSet<int> Fitted { get; init; } = [];

    /// <summary>Planks of it are fitted or sawn: the rest is laid on from them, and no shift of the master is left to choose.</summary>
    public bool Held { get; init; }

    /// <summary>Sawn planks of it that lie nowhere on the bottom as it now is, by id, and what is amiss.</summary>
    public ImmutableDictionary<PlankId, Func<LengthUnit, string>> Strays { get; init; } =
        ImmutableDictionary<PlankId, Func<LengthUnit, string>>.Empty;

    public int Planks => Seams.Length + 1;

    public Seam? Forward(int plank) => plank > 0 ? Seams[plank - 1] : null;

    public Seam? After(int plank) => plank < Seams.Length ? Seams[plank] : null;
}
