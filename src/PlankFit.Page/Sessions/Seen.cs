using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Offsets;

namespace PlankFit.Pages.Sessions;

/// <summary>A session at one moment.</summary>
/// <param name="Turn">Of the newest text.</param>
/// <param name="Tried">The newest text that was laid, or could not be.</param>
/// <param name="Good">What the picture is of; null before anything could be laid.</param>
/// <param name="Faults">Of the text of <paramref name="Tried"/>; empty where planks are laid by it.</param>
internal sealed record Seen(
    History History,
    int Turn,
    int Tried,
    Laid? Good,
    ImmutableArray<Finding> Faults
)
{
    /// <summary>The newest planks, whether the rest is worked out already or not; null before there are any.</summary>
    public LaidPlanks? Planks { get; init; }

    /// <summary>What was read last of which the table of offsets could be read; null where no text has named one.</summary>
    public ShownJob? Read { get; init; }

    /// <summary>The table of offsets as it was read from the disk, or saved there, last; null where none could be.</summary>
    public TableInHand? OnDisk { get; init; }

    /// <summary>The table of offsets as it is now, mended perhaps; null where none could be read.</summary>
    public TableInHand? Table =>
        TableMending.Applies(History.Present.Text, History.Present.Table)
            ? History.Present.Table
            : OnDisk;

    /// <summary>The newest text is the one on the disk, as far as this program knows.</summary>
    public bool IsSaved { get; init; }

    /// <summary>Once a text was laid.</summary>
    /// <param name="of">The turn of that text.</param>
    /// <param name="laid">Null where it has faults: the last good picture stays.</param>
    /// <param name="inHand">The table that it was laid to, where it was not the disk's.</param>
    public Seen After(int of, ShownJob shown, Laid? laid, TableInHand? inHand) =>
        this with
        {
            Tried = of,
            Read = shown.Table is null ? Read : shown,
            OnDisk = shown.Table is { } laidTo && laidTo != inHand ? laidTo : OnDisk,
            Good = laid ?? Good,
            Faults = laid is null ? shown.Findings : [],
            // Where the rest was refused, its planks are not to be seen either.
            Planks = (laid ?? Good)?.Planks,
        };
}
