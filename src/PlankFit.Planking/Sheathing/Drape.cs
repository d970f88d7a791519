namespace PlankFit.Planking.Sheathing;

/// <summary>What a shear asks of cloth and builder. The steps are proposals, no source; where a cloth locks is its own.</summary>
public static class Drape
{
    public const double FlatDegrees = 2;

    public const double StrokedDegrees = 10;

    /// <summary>Over which a thread is held, to tell how far it lifts off a hollow, mm.</summary>
    public const double LiftOverMm = 300;

    /// <summary>Threads that would lift by less than this over <see cref="LiftOverMm"/> are not told, mm.</summary>
    public const double LeastLiftMm = 0.5;

    /// <summary>Half of where it locks, degrees.</summary>
    public static double Bears(ClothSpec cloth) => cloth.LocksAtDegrees / 2;

    /// <summary>Beyond half of where it locks the cloth is asked too much.</summary>
    public static DrapeVerdict Verdict(double shearDegrees, ClothSpec cloth)
    {
        double shear = Math.Abs(shearDegrees);
        return shear > Bears(cloth) ? DrapeVerdict.TooMuch
            : shear < FlatDegrees ? DrapeVerdict.LiesFlat
            : shear < StrokedDegrees ? DrapeVerdict.StrokeOut
            : DrapeVerdict.PlanThePull;
    }
}
