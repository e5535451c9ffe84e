using System.Text;
using Compat.Curation.Checking;

namespace Compat.Curation.Reviewing;

/// <summary>One side of a comparison: the rules that can speak, as boxes of cells, and what they answer.</summary>
internal sealed class PairSide
{
    private readonly ReviewSubject _subject;
    private readonly Scene _scene;
    private readonly CellReader _reader;
    private readonly CellBox[] _boxes;

    public PairSide(ReviewSide side, ReviewSubject subject, int agent)
    {
        _subject = subject;
        var speaker = side.Ground.SpeakerOf(agent);
        _scene = new Scene(side.Kb, subject.Parts, speaker.Substance, speaker.Component, exposureTimeWithoutEnd: false);
        _reader = new CellReader(side.Kb, _scene);
        _boxes = _scene.Candidates.Select(one => CellBox.Of(one.Cells)).ToArray();
    }

    /// <summary>Whether more uses may be answered better than fewer: a permission for few uses sets another aside or asks what a variant cannot meet, or a prohibition that starts later sets an exception aside.</summary>
    public bool RisesWithUses => _scene.Candidates.Where((one, i) => MayRise(one.Rule, i)).Any();

    /// <summary>How many candidates there are.</summary>
    public int Count => _boxes.Length;

    public CompiledRule RuleAt(int i) => _scene.Candidates[i].Rule;

    public CellBox BoxAt(int i) => _boxes[i];

    /// <summary>The answer where the part does not stand the method, whatever the agent; null where it does.</summary>
    public CellAnswer? Barrier(ApplicationMethod method) =>
        Pieces.BarrierOf(method, new Question(), _subject.Parts) is { } barrier ? _reader.Of(barrier) : null;

    /// <summary>The answer where some candidates apply.</summary>
    public CellAnswer Of(IEnumerable<int> covering)
    {
        var applies = new bool[Count];
        foreach (var i in covering) applies[i] = true;
        return _reader.Of(applies);
    }

    private bool MayRise(CompiledRule rule, int i)
    {
        const int uses = (int)Axis.Uses;
        var limit = rule.Rule.When.Uses;
        if (limit.Statement == AxisStatement.Any || (_boxes[i].Low[uses] == 0 && limit is { Statement: AxisStatement.Within, Range.Upper: null })) return false;
        return rule.Overridden.Length > 0 || (rule.Allows && _subject.Parts.Any(variant => rule.Rule.Duties.Any(duty => !variant.CanMeet(duty))));
    }

    /// <summary>The rule, exposure times and voices of a candidate: the same text on both sides where it speaks alike.</summary>
    public string MarkOf(int i)
    {
        var mark = new StringBuilder(RuleAt(i).Rule.Id.Value).Append(' ').Append(_boxes[i].Low[(int)Axis.ExposureTime]).Append(' ').Append(_boxes[i].High[(int)Axis.ExposureTime]);
        for (var variant = 0; variant < _scene.Variants.Count; variant++)
        {
            var voices = _scene.Variants[variant];
            for (var voice = 0; voice < voices.Voices.Length; voice++)
                if (voices.Voices[voice].Contains(i)) mark.Append(' ').Append(variant).Append('/').Append(voice);
            if (voices.DutiesOnly.Contains(i)) mark.Append(' ').Append(variant).Append('d');
        }

        return mark.ToString();
    }
}
