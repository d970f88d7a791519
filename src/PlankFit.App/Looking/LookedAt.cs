using PlankFit.Planking.Fairness;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Looking;

/// <summary>All that a look at a table's fairness hangs on.</summary>
/// <param name="Text">Of the table's file, in which places are named.</param>
internal sealed record LookedAt(
    OffsetTable Offsets,
    AsWritten AsWritten,
    LengthUnit WrittenIn,
    LengthUnit Units,
    string Text,
    string File
)
{
    public static LookedAt Of(Job job, string text, string file) =>
        new(job.Offsets, job.AsWritten, job.WrittenIn, job.Units, text, file);
}
