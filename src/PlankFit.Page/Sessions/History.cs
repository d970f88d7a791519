using System.Collections.Immutable;
using PlankFit.Reading.Offsets;

namespace PlankFit.Pages.Sessions;

/// <summary>A text that the job had, and what was done to come to it.</summary>
/// <param name="Table">The table of offsets where it was mended and is not saved yet; null where the file's holds.</param>
internal sealed record Step(string Text, string Done, TableInHand? Table = null);

/// <summary>The texts of a job, one after the other: a change is a text, and undoing it is the text before.</summary>
/// <param name="Past">The newest first.</param>
/// <param name="Gesture">Of what the present text came: what goes on in one movement of the hand is one step.</param>
internal sealed record History(
    ImmutableStack<Step> Past,
    Step Present,
    ImmutableStack<Step> Future,
    string Gesture
)
{
    /// <summary>Of all texts that undo can come back to, signs: some thousands of steps of a job of usual length.</summary>
    private const int MostSigns = 16_000_000;

    /// <summary>The newest that there is room for, one at the least.</summary>
    private static ImmutableStack<Step> Bounded(ImmutableStack<Step> past)
    {
        int signs = 0,
            kept = 0;
        foreach (Step step in past)
        {
            signs += step.Text.Length + (step.Table?.Text.Length ?? 0);
            if (signs > MostSigns && kept > 0)
            {
                return ImmutableStack.CreateRange(past.Take(kept).Reverse());
            }

            kept++;
        }

        return past;
    }

    public static History Of(string text) =>
        new(ImmutableStack<Step>.Empty, new(text, ""), ImmutableStack<Step>.Empty, "");

    /// <param name="gesture">Empty for a change by itself.</param>
    public History With(string text, string done, string gesture)
    {
        Step present = new(text, done, Present.Table);
        return gesture.Length > 0 && gesture == Gesture
                ? this with
                {
                    Present = present,
                    Future = ImmutableStack<Step>.Empty,
                }
            : text == Present.Text ? this
            : new(Bounded(Past.Push(Present)), present, ImmutableStack<Step>.Empty, gesture);
    }

    /// <summary>The table anew.</summary>
    /// <param name="table">Null where what stands on the disk holds again.</param>
    public History WithTable(string text, TableInHand? table, string done) =>
        new(Bounded(Past.Push(Present)), new(text, done, table), ImmutableStack<Step>.Empty, "");

    /// <summary>Itself where there is nothing before.</summary>
    public History Undone() =>
        Past.IsEmpty ? this : new(Past.Pop(out Step before), before, Future.Push(Present), "");

    /// <summary>Itself where nothing was undone.</summary>
    public History Redone() =>
        Future.IsEmpty ? this : new(Past.Push(Present), Future.Peek(), Future.Pop(), "");
}
