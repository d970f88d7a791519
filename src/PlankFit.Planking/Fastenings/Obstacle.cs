using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Fastenings;

/// <summary>What a fastening must keep away from: a thing that both sides of the boat have by one name, "the after seam", or a joint, which has a name on each.</summary>
/// <param name="Joint">Null for anything else.</param>
public readonly record struct Obstacle(string What, JointId? Joint)
{
    /// <summary>The same on the other side of the boat.</summary>
    public Obstacle Twin => this with { Joint = Joint?.Twin };

    public static Obstacle Of(JointId joint) => new("joint", joint);

    public static implicit operator Obstacle(string what) => new(what, null);

    public override string ToString() => Joint is { } joint ? $"{What} {joint}" : What ?? "";
}
