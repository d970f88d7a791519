using System.Collections.Immutable;

namespace PlankFit.Pages.Sessions;

/// <summary>A text that the job had, and what was done to come to it.</summary>
internal sealed record Step(string Text, string Done);

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
    public static History Of(string text) =>
        new(ImmutableStack<Step>.Empty, new(text, ""), ImmutableStack<Step>.Empty, "");

    /// <param name="gesture">Empty for a change by itself.</param>
    public History With(string text, string done, string gesture)
    {
        Step present = new(text, done);
        return gesture.Length > 0 && gesture == Gesture
                ? this with
                {
                    Present = present,
                    Future = ImmutableStack<Step>.Empty,
                }
            : text == Present.Text ? this
            : new(Past.Push(Present), present, ImmutableStack<Step>.Empty, gesture);
    }

    /// <summary>Itself where there is nothing before.</summary>
    public History Undone() =>
        Past.IsEmpty ? this : new(Past.Pop(out Step before), before, Future.Push(Present), "");

    /// <summary>Itself where nothing was undone.</summary>
    public History Redone() =>
        Future.IsEmpty ? this : new(Past.Push(Present), Future.Peek(), Future.Pop(), "");
}
