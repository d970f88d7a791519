using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Export.Checks;

/// <summary>What the check sheet asks for at one place.</summary>
/// <param name="Id">Of the first reading.</param>
/// <param name="Where">In words, without the plank.</param>
/// <param name="ShouldMm">What the tape should say.</param>
/// <param name="LimitMm">By which it may differ; null where the sheet knows none.</param>
/// <param name="Times">Which readings of it there is a blank for.</param>
public sealed record CheckBlank(
    BlankId Id,
    string Where,
    double ShouldMm,
    double? LimitMm,
    ImmutableArray<int> Times
)
{
    /// <summary>The plank whose seams it is of.</summary>
    public PlankId? Plank { get; init; }

    /// <summary>Where along the hull it is taken, mm; null where it is of a plank, or of no place.</summary>
    public double? XMm { get; init; }

    /// <summary>What else is to be known of it; empty where nothing is.</summary>
    public string Note { get; init; } = "";

    /// <summary>What it should say hangs on how planks are laid: a reading that was taken to another lay-out's marks says nothing of these.</summary>
    public bool GoesWithTheLayOut { get; init; }

    /// <summary>The hull is adjusted to it once it stands in measured.csv.</summary>
    public bool IsTakenUp { get; init; }
}

/// <summary>Blanks that stand together on the sheet.</summary>
public sealed record BlankGroup(string Title, ImmutableArray<CheckBlank> Blanks);
