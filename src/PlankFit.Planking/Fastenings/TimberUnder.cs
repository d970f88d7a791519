using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Joints;

namespace PlankFit.Planking.Fastenings;

/// <summary>A timber where it crosses a plank, in the plank's frame.</summary>
internal sealed class TimberUnder
{
    private readonly Vec3 start,
        end;

    public TimberUnder(
        FramedPlank plank,
        FramingCrossing crossing,
        ImmutableArray<PlankJoint> joints
    )
    {
        (Name, WidthMm) = (crossing.Of.Name, crossing.Of.WidthMm);
        Cover = Lines.Thinned(plank.TurnedAround(crossing.Cover));
        One = Lines.Thinned(plank.TurnedAround(crossing.OneEdge));
        Other = Lines.Thinned(plank.TurnedAround(crossing.OtherEdge));
        IsThere = crossing.Cover.Length >= 3;
        CarriesJoint = IsThere && joints.Any(j => Meets(plank, j));
        if (IsThere && crossing.Centre.Length > 1)
        {
            Middle = new(plank.TurnedAround(crossing.Centre));
            start = Under(plank, Middle.At(0));
            end = Under(plank, Middle.At(Middle.LengthMm));
        }
    }

    public string Name { get; }

    public double WidthMm { get; }

    public Vec2[] Cover { get; }

    public Vec2[] One { get; }

    public Vec2[] Other { get; }

    /// <summary>Whether it covers any of the plank.</summary>
    public bool IsThere { get; }

    public bool CarriesJoint { get; }

    /// <summary>Its middle; null where that lies off the plank.</summary>
    public Track? Middle { get; }

    /// <summary>An end of its middle in space, starboard frame.</summary>
    public Vec3 End(bool last) => last ? end : start;

    private static Vec3 Under(FramedPlank plank, Vec2 at) =>
        plank.Plank.Map.Under(plank.Turned(at)).P;

    private bool Meets(FramedPlank plank, PlankJoint joint)
    {
        var timber = new Clearance();
        timber.KeepOut(Cover, 0, "");
        var track = new Track(plank.TurnedAround(joint.OuterLine));
        return Enumerable.Range(0, 9).Any(i => timber.At(track.At(track.LengthMm * i / 8)) < 0);
    }
}
