using System.Collections.Immutable;
using PlankFit.Export.Solids;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Sessions;

/// <summary>The planks of a text of the job: all that a picture needs, and there before the rest.</summary>
/// <param name="Plan">Perhaps of the planks alone.</param>
internal sealed record LaidPlanks(int Turn, BottomPlan Plan)
{
    private readonly Lazy<ImmutableArray<PlankSolid>> solids = new(() => PlanSolids.Of(Plan));

    public ImmutableArray<PlankSolid> Solids => solids.Value;

    /// <summary>The same as bytes.</summary>
    public byte[] Packed
    {
        get
        {
            lock (solids)
            {
                return field ??= PackedSolids.Of(Solids);
            }
        }
    }
}

/// <summary>A text of the job that everything was worked out by.</summary>
/// <param name="Said">What the change did, against the plan before it was begun.</param>
internal sealed record Laid(
    LaidPlanks Planks,
    BottomPlan Plan,
    ImmutableArray<Finding> Findings,
    ImmutableArray<string> Said
)
{
    public int Turn => Planks.Turn;
}
