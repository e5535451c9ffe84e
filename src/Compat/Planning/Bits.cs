namespace Compat.Planning;

/// <summary>Sets of small whole numbers as bits of words.</summary>
internal static class Bits
{
    public static int Count(ulong word)
    {
        word -= (word >> 1) & 0x5555555555555555UL;
        word = (word & 0x3333333333333333UL) + ((word >> 2) & 0x3333333333333333UL);
        word = (word + (word >> 4)) & 0x0F0F0F0F0F0F0F0FUL;
        return (int)((word * 0x0101010101010101UL) >> 56);
    }

    /// <summary>How many lie in words of an array.</summary>
    public static int Count(ulong[] set, int start, int words)
    {
        var count = 0;
        for (var w = start; w < start + words; w++) count += Count(set[w]);
        return count;
    }

    /// <summary>How many lie in the one and not in the other.</summary>
    public static int CountWithout(ulong[] one, ulong[] other)
    {
        var count = 0;
        for (var w = 0; w < one.Length; w++) count += Count(one[w] & ~other[w]);
        return count;
    }

    public static ulong[] Union(ulong[] one, ulong[] other)
    {
        var union = new ulong[one.Length];
        for (var w = 0; w < union.Length; w++) union[w] = one[w] | other[w];
        return union;
    }

    public static ulong[] Without(ulong[] one, ulong[] other)
    {
        var rest = new ulong[one.Length];
        for (var w = 0; w < rest.Length; w++) rest[w] = one[w] & ~other[w];
        return rest;
    }

    public static bool Meet(ulong[] one, ulong[] other)
    {
        for (var w = 0; w < one.Length; w++)
            if ((one[w] & other[w]) != 0) return true;
        return false;
    }
}
